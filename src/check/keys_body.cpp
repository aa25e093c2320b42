// Keys of the body: measures, ease, sizes and fittings. All private.
#include <deque>
#include <string>

#include "check/key_row.h"

namespace gownsheaf {

namespace {

struct MeasureRow {
  std::string_view name, meaning;
};

// Girths are taken level around the body, 5 to 80 in.
constexpr MeasureRow kGirths[] = {
    {"bust", "Round the fullest bust."},
    {"high bust", "Round the chest above the bust."},
    {"underbust", "Round the ribs below the bust."},
    {"chest", "Round the chest."},
    {"waist", "Where a tied belt settles."},
    {"hip", "Round the fullest hip."},
    {"neck", "Round the neck."},
    {"upper arm", "Round the upper arm."},
    {"elbow", "Round the bent elbow."},
    {"wrist", "Round the wrist."},
    {"armhole", "Round the arm's joint."},
    {"head", "Round the head."},
    {"thigh", "Round the thigh."},
    {"calf", "Round the calf."},
};
constexpr MeasureRow kLengths[] = {
    {"hip depth", "Down from waist to hip."},
    {"front neck to waist", "Neck pit to waist, in front."},
    {"back neck to waist", "Nape to waist, behind."},
    {"shoulder", "Neck point to shoulder point."},
    {"across chest", "Armhole to armhole, in front."},
    {"across back", "Armhole to armhole, behind."},
    {"sleeve", "Shoulder point to wrist, arm bent."},
    {"underarm to waist", "Armpit to waist, at the side."},
    {"bust point to waist", "Bust point down to waist."},
    {"bust points apart", "Bust point to bust point."},
    {"height", "Crown to floor."},
    {"knee", "Knee to floor."},
    {"stride", "Heel to heel in a long step."},
};

void add_measures(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  static std::deque<std::string> paths;  // a KeySpec looks into them; built once
  const auto kept = [](std::string path) -> std::string_view { return paths.emplace_back(std::move(path)); };
  const auto add = [&](const MeasureRow& m, std::string_view least, std::string_view most) {
    const std::string base = "measures/" + std::string(m.name);
    KeyRow whole(kept(base), length);
    whole.limits(least, most).secret().form("{ left, right }").means(m.meaning);
    if (m.name == "hip depth") whole.is("7 in", 'a');
    keys.push_back(whole);
    keys.push_back(KeyRow(kept(base + "/left"), length).must().limits(least, most).secret().means("The left side."));
    keys.push_back(KeyRow(kept(base + "/right"), length).must().limits(least, most).secret().means("The right side."));
  };
  for (const MeasureRow& m : kGirths) add(m, "5 in", "80 in");
  for (const MeasureRow& m : kLengths) add(m, "1 in", "80 in");
  keys.push_back(KeyRow("measures/waist to floor", length)
                     .limits("1 in", "80 in")
                     .secret()
                     .form("{ front, side, back }, or eight: { front, front left, left, back left, … }")
                     .means("Waist to floor, over everything and in the shoes."));
  for (const char* place : {"front", "side", "back", "front left", "left", "back left", "back right", "right", "front right"})
    keys.push_back(KeyRow(kept(std::string("measures/waist to floor/") + place), length)
                       .limits("1 in", "80 in")
                       .secret()
                       .means("Waist to floor there."));
}

}  // namespace

void add_body_keys(std::vector<KeySpec>& keys) {
  using enum KeyKind;
  keys.push_back(KeyRow("measures", block).secret().means("Measures of the body, over the layers named in `taken`."));
  const std::vector<KeySpec> taken = {
      KeyRow("measures/taken", block).secret().means("When and over what the measures were taken."),
      KeyRow("measures/taken/day", day).secret().means("The day."),
      KeyRow("measures/taken/over", list).each(text).means("The layers worn, such as chemise and corset."),
      KeyRow("measures/taken/measured by", text).secret().since(kLater).means("Who measured."),
      KeyRow("measures/taken/corset gap", length)
          .limits("0 in", "12 in")
          .secret()
          .since(kLater)
          .means("How far the corset's edges stand apart, laced."),
  };
  keys.insert(keys.end(), taken.begin(), taken.end());
  add_measures(keys);
  const std::vector<KeySpec> rows = {
      KeyRow("measures/other", map).each(length, "measure").secret().means("Any further measure, under a name of its own."),
      KeyRow("ease", map)
          .each(length)
          .of("measures")
          .limits("-20 in", "40 in")
          .secret()
          .since(1)
          .guess("~ 0 to 1 in over a corset")
          .means("Finished girth minus body girth; `1/2 in less` is smaller than the body."),
      KeyRow("finished girths", map)
          .each(length)
          .of("measures")
          .limits("5 in", "120 in")
          .secret()
          .agrees("ease")
          .means("Girths measured on the garment or pattern; must agree with measure and ease."),
      KeyRow("size table", block).means("A printed or own table of sizes."),
      KeyRow("size table/name", text).must().means("Whose table it is."),
      KeyRow("size table/chosen by", name)
          .of("measures")
          .guess("~ bust for bodices, chest for coats, hip for skirts")
          .means("The girth that decides the size."),
      KeyRow("size table/girths are", word).words("body|finished").is("body", 'c').means("What the table's girths measure."),
      KeyRow("size table/sizes", list).each(block, "size").must().means("Two rows or more, rising."),
      KeyRow("size table/sizes/*/size", name).must().means("Label of the size."),
      KeyRow("size table/sizes/*/*", length).of("measures").means("A measure of this size."),
      KeyRow("size", text)
          .is("nearest", 'c')
          .means("Which size is made: its label, or `nearest`, `larger`, `between`; `--size` wins."),
      KeyRow("grade", block).since(kLater).means("How pieces change between sizes."),
      KeyRow("grade/lines in quarter", map).each(ratio).means("How many lines each quarter of the girth is spread over."),
      KeyRow("fittings", list).each(block, "fitting").secret().means("What each mock-up showed."),
      KeyRow("fittings/*/fitting", name).must().means("Name of the fitting."),
      KeyRow("fittings/*/day", day).means("The day."),
      KeyRow("fittings/*/wore", list).each(text).means("Layers worn."),
      KeyRow("fittings/*/cloth thickness", length).is("0.3 mm", 'c').means("Thickness of the layers the mock-up had."),
      KeyRow("fittings/*/found", list).each(block, "finding").means("What was too loose, tight, long or short, and where."),
      KeyRow("fittings/*/found/*/at", text).must().means("A measure or an edge."),
      KeyRow("fittings/*/found/*/is", word).words("loose|tight|long|short|gapes|rides up").must().means("What it does."),
      KeyRow("fittings/*/found/*/by", length).must().means("By how much."),
      KeyRow("fittings/*/found/*/shared over", list)
          .each(name)
          .of("seams")
          .guess("~ all that cross it")
          .means("Seams that share the change."),
      KeyRow("fittings/*/found/*/at most", length).is("1/4 in", 'c').means("The most that one edge may take."),
      KeyRow("fittings/*/girths", map)
          .each(length)
          .of("measures")
          .means("Girths of the garment at the fitting; a joined skirt must meet the waist."),
      KeyRow("fittings/*/signed", day).words("not yet").means("The day it was found right."),
  };
  keys.insert(keys.end(), rows.begin(), rows.end());
}

}  // namespace gownsheaf
