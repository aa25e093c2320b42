// What lies on the shelf: cloths, with the cloth table's values where the maker wrote none.
#include <algorithm>

#include "check/sections.h"

namespace gownsheaf {

namespace {

// Where a kind is in no table: a middling dress cloth (common practice, no source).
const Length kUnknownWidth = Length::inches(54);
const Length kUnknownThickness = Length::tenth_mm(4);
constexpr double kUnknownWeight = 200;  // g/m²
constexpr std::string_view kLiesOneWay[] = {"velvet", "velveteen", "plush", "corduroy", "nap", "napped", "pile", "shot"};

template <class T>
void from_table(Given<T>& value, const std::optional<T>& row, const ClothKind* kind) {
  if (value.known() || kind == nullptr || !row) return;
  const SourceSpan at = value.at;
  value = Given<T>::standing(*row, kind->label, "the cloth table, " + kind->kind);
  value.at = at;
}

template <class T>
void stand_in(Given<T>& value, T standing, char label, std::string because) {
  if (value.known()) return;
  const SourceSpan at = value.at;
  value = Given<T>::standing(std::move(standing), label, std::move(because));
  value.at = at;
}

void fill_bought(const Item& item, Cloth& cloth) {
  const Entry* e = item.at("bought");
  if (e == nullptr) return;
  cloth.bought.at = e->at;
  if (e->text == kToMeasure) {
    cloth.bought.origin = Origin::to_measure;
    return;
  }
  cloth.bought.value.emplace();
  cloth.bought.origin = e->text == kNone ? Origin::none : Origin::written;
  for (const Entry* one : item.values("bought")) {
    BoughtLength bought;
    bought.at = one->at;
    if (one->kind == Entry::Kind::block) {
      const Item block(one, "cloths/*/bought/*");
      const auto length = block.length("length");
      if (!length.known()) continue;
      bought.length = *length;
      bought.width = block.length("width").value;
      bought.arrives = block.day("arrives").value;
    } else {
      const auto read = read_length(one->text, "bought");
      if (!read.ok()) continue;
      bought.length = read.value().length;
    }
    cloth.bought.value->push_back(std::move(bought));
  }
}

void fill_remnants(const Filling& file, const Item& item, Cloth& cloth) {
  std::int64_t n = 0;
  for (const Item& one : item.items("remnants")) {
    Remnant remnant;
    remnant.named = named_of(file, one, "", "remnant");
    ++n;
    if (remnant.named.name.empty()) {
      remnant.named.name = "remnant " + whole_number(n);
      remnant.named.at = one.entry()->at;
    }
    const auto width = one.length("width"), length = one.length("length");
    if (!width.known() || !length.known()) continue;
    remnant.width = *width;
    remnant.length = *length;
    for (const Item& bad : one.items("bad places")) {
      const auto x = bad.length("from end"), y = bad.length("from selvage"), across = bad.length("width"),
                 along = bad.length("length");
      if (!x.known() || !y.known() || !across.known() || !along.known()) continue;
      remnant.bad_places.push_back({*x, *y, *along, *across});
      if (*x + *along > remnant.length || *y + *across > remnant.width)
        report(file, {"cloths", cloth.named.name}, Severity::error, "out-of-range", bad.entry()->at,
               "A bad place of " + remnant.named.name + " lies beyond its cloth.",
               "`from end` and `from selvage` are of the corner nearest both");
    }
    cloth.remnants.push_back(std::move(remnant));
  }
}

void fill_keep_and_offered(const Item& item, Cloth& cloth, const Filling& file) {
  for (const Item& one : item.items("keep")) {
    KeptPanel panel;
    panel.named = named_of(file, one, "", "panel");
    const auto length = one.length("length");
    if (panel.named.name.empty() || !length.known()) continue;
    panel.width = one.length("width").value;
    panel.length = *length;
    cloth.keep.push_back(std::move(panel));
  }
  for (const Item& one : item.items("offered")) {
    const auto width = one.length("width");
    if (!width.known()) continue;
    cloth.offered.push_back({*width, one.money("price").value, one.entry()->at});
  }
}

// Folded across, the layer beneath lies with its top the other way.
void check_fold(const Filling& file, const Item& item, Cloth& cloth) {
  cloth.fold = choice(item.word("fold"), ClothFold::crosswise);
  stand_in(cloth.fold, ClothFold::none, 'c', "one layer, where no fold is written");
  if (*cloth.fold != ClothFold::crosswise || !cloth.lay.known() || *cloth.lay != LayRule::one_way) return;
  report(file, {"cloths", cloth.named.name}, Severity::hold, "fold-turns-nap", cloth.fold.at,
         capital(cloth.named.name) +
             " lies one way, and folded crosswise its lower layer lies the other way: it is laid in one layer.",
         "`fold: lengthwise`; or cut it at the fold and turn the lower layer round, then write `fold: none`");
  cloth.fold.value = ClothFold::none;
}

void fill_envelope(const Item& item, Cloth& cloth) {
  const Item says = item.block("envelope says");
  if (says.entry() == nullptr) return;
  const auto length = says.length("length"), width = says.length("width");
  if (!length.known() || !width.known()) return;
  cloth.envelope_says = EnvelopeSays{*length, *width, says.entry()->key_at};
}

// Half a drop is half of the repeat along: without it nothing can be counted.
void check_repeat(const Filling& file, const Item& item, const Cloth& cloth) {
  if (!cloth.repeat) return;
  const About about{"cloths", cloth.named.name};
  const Item repeat = item.block("repeat");
  if (cloth.repeat->half_drop && !cloth.repeat->along && !repeat.has("along"))
    report(file, about, Severity::error, "repeat-needed", repeat.at("half drop")->at,
           "The design of " + cloth.named.name + " drops by half a repeat, and its repeat along the cloth is not written.",
           "`repeat: { along: 12 in, half drop: yes }`, from a motif to the next below it");
  if (cloth.repeat->across && cloth.width.known() && *cloth.repeat->across > *cloth.width)
    report(file, about, Severity::error, "repeat-too-wide", repeat.at("across")->at,
           "The repeat across " + cloth.named.name + " is wider than the cloth.",
           "`across` is from a motif to the next beside it; along the length it is `along`");
}

// Wool is sold by its weight for a running yard, which is half as much again as for a square yard.
void check_weight_basis(const Filling& file, const Item& item, const Cloth& cloth, const ClothKind* kind) {
  if (kind == nullptr || !kind->weight || cloth.weight.origin != Origin::written || !cloth.width.known()) return;
  const std::string text = item.plain("weight");
  const auto ounces = text.find(" oz/");
  if (ounces == std::string::npos && text.find(" oz per sq") == std::string::npos) return;
  const double written = cloth.weight->value, usual = kind->weight->value;
  const double spread = written * 36.0 / cloth.width->in_inches();
  if (written < usual * 1.4 || spread < usual * 0.6 || spread > usual * 1.4) return;
  const std::string number = text.substr(0, text.find(' '));
  report(file, {"cloths", cloth.named.name}, Severity::warning, "weight-basis", cloth.weight.at,
         text + " is much for " + kind->kind + " (about " + decimal(usual / kGramsPerSquareMetrePerOuncePerSquareYard, 0) + ").",
         "shops quote wool by the running yard: `" + number + " oz per running yd`");
}

Given<LayRule> lay_of(const Item& item, const Cloth& cloth, const ClothKind* kind) {
  auto lay = choice(item.word("lay"), LayRule::any_way);
  if (lay.known()) return lay;
  if (cloth.design.known() && *cloth.design != "plain")
    return Given<LayRule>::guessed(LayRule::one_way, "its design: " + *cloth.design, cloth.design.at);
  if (kind != nullptr && !kind->lay.empty())
    if (const auto rule = choice(kind->lay, LayRule::any_way))
      return Given<LayRule>::standing(*rule, kind->label, "the cloth table, " + kind->kind);
  if (cloth.kind.known())
    for (const std::string_view word : kLiesOneWay)
      if (has_word(*cloth.kind, word))
        return Given<LayRule>::guessed(LayRule::one_way, "its kind says " + std::string(word), cloth.kind.at);
  return Given<LayRule>::standing(LayRule::either_way, 'c', "a cloth without nap, pile or design");
}

}  // namespace

void fill_cloths(const Filling& file, Project& project) {
  const bool inches = *project.show_lengths_in == ShownIn::inches;
  for (const Item& item : items_of_map(file.root, "cloths")) {
    Cloth cloth;
    cloth.named = named_of(file, item, "cloths", "");
    cloth.kind = item.text("kind");
    if (cloth.kind.known()) cloth.kind.value = clean_name(*cloth.kind);
    const ClothKind* kind = cloth.kind.known() ? file.templates.cloth_kind(*cloth.kind) : nullptr;
    cloth.used_as = choice(item.word("used as"), UsedAs::mock_up);

    cloth.width = item.length("width");
    if (kind != nullptr) from_table(cloth.width, kind->width, kind);
    cloth.weight = item.cloth_weight("weight", cloth.width.value ? cloth.width.value : kUnknownWidth);
    cloth.thickness = item.length("thickness");
    if (kind != nullptr) {
      from_table(cloth.weight, kind->weight, kind);
      from_table(cloth.thickness, kind->thickness, kind);
    } else {
      std::vector<std::string> guessed;
      if (!cloth.width.known()) guessed.push_back("width");
      if (!cloth.weight.known()) guessed.push_back("weight");
      if (!cloth.thickness.known()) guessed.push_back("thickness");
      if (cloth.kind.known() && !guessed.empty() && !file.templates.cloth_kinds.empty())
        report(file, {"cloths", cloth.named.name}, Severity::note, "unknown-cloth-kind", cloth.kind.at,
               "`" + *cloth.kind + "` is not in the cloth table; " + listed(guessed) + (guessed.size() == 1 ? " is" : " are") +
                   " guessed.",
               "measure it and write " + listed([&] {
                 std::vector<std::string> keys;
                 for (const std::string& g : guessed) keys.push_back("`" + g + "`");
                 return keys;
               }()) +
                   "; a 12 in square on the kitchen scale gives the weight");
    }
    stand_in(cloth.width, kUnknownWidth, 'c', "a kind of cloth in no table");
    stand_in(cloth.weight, MassPerArea{kUnknownWeight}, 'c', "a kind of cloth in no table");
    stand_in(cloth.thickness, kUnknownThickness, 'c', "a kind of cloth in no table");

    cloth.selvage = item.length("selvage");
    stand_in(cloth.selvage, Length::sixty_fourths(32), 'c', "1/2 in of selvage at each edge");
    // Where the usual selvage is too much, the cloth is too narrow for a cloth, which was said already.
    const auto& told = file.diag.in_order_found();
    const bool told_already =
        std::any_of(told.begin(), told.end(), [&](const Diagnostic& d) { return d.at == cloth.selvage.at; });
    if (cloth.selvage.origin == Origin::written && !told_already && *cloth.selvage * 2 >= *cloth.width)
      report(file, {"cloths", cloth.named.name}, Severity::error, "out-of-range", cloth.selvage.at,
             "Two selvages of " + item.plain("selvage") + " leave nothing of the width.", "`selvage` is lost at each edge");
    cloth.design = item.word("design");
    stand_in(cloth.design, std::string("plain"), 'c', "no design is named");
    cloth.lay = lay_of(item, cloth, kind);

    const Item both_ways = item.block("shrinks");
    cloth.shrinks_along = both_ways.entry() != nullptr ? both_ways.percent("along") : item.percent("shrinks");
    cloth.shrinks_across = both_ways.percent("across");
    if (kind != nullptr) from_table(cloth.shrinks_along, kind->shrinks, kind);
    stand_in(cloth.shrinks_along, Percent{Ratio::of(3, 100)}, 'c', "a kind of cloth in no table");
    stand_in(cloth.shrinks_across, Percent{}, 'c', "no shrinkage across unless it is written");
    cloth.shrunk_already = item.yes_no("shrunk already");
    stand_in(cloth.shrunk_already, false, 'c', "not shrunk unless it is written");

    fill_bought(item, cloth);
    cloth.arrives = item.day("arrives");
    cloth.takes_to_arrive = item.span("takes to arrive");
    cloth.restock = item.span("restock");
    fill_remnants(file, item, cloth);
    cloth.sold_by = item.length("sold by");
    stand_in(cloth.sold_by, inches ? Length::inches(36).times(1, 8) : Length::cm(10), 'c', "shops cut in such steps");
    cloth.gap = item.length("gap");
    cloth.straighten = item.length("straighten");
    stand_in(cloth.straighten, Length::inches(2), 'c', "lost at each end in squaring");
    const Item repeat = item.block("repeat");
    if (repeat.entry() != nullptr) {
      cloth.repeat.emplace();
      cloth.repeat->along = repeat.length("along").value;
      cloth.repeat->across = repeat.length("across").value;
      cloth.repeat->half_drop = repeat.yes_no("half drop").value.value_or(false);
      cloth.repeat->at = repeat.entry()->key_at;
    }
    cloth.stiffness = item.word("stiffness");
    if (!cloth.stiffness.known() && kind != nullptr && !kind->stiffness.empty())
      cloth.stiffness = Given<std::string>::standing(kind->stiffness, kind->label, "the cloth table, " + kind->kind);
    cloth.overhang = item.length("overhang");
    fill_envelope(item, cloth);
    check_fold(file, item, cloth);
    fill_keep_and_offered(item, cloth, file);
    check_repeat(file, item, cloth);
    cloth.care = item.word("care");
    if (!cloth.care.known() && kind != nullptr && !kind->care.empty())
      cloth.care = Given<std::string>::standing(kind->care, kind->label, "the cloth table, " + kind->kind);
    cloth.frays = item.length("frays");
    if (kind != nullptr) from_table(cloth.frays, kind->frays, kind);
    cloth.sheer = item.yes_no("sheer");
    cloth.old = item.yes_no("old");
    cloth.surface = item.word("surface");
    cloth.burn_test = item.span("burn test");
    check_weight_basis(file, item, cloth, kind);
    project.cloths.push_back(std::move(cloth));
  }
}

void fill_notions(const Filling& file, Project& project) {
  for (const Item& item : items_of_map(file.root, "notions")) {
    Notion notion;
    notion.named = named_of(file, item, "notions", "");
    notion.kind = item.plain("kind");
    notion.size = item.plain("size");
    notion.width = item.length("width");
    notion.thickness = item.length("thickness");
    notion.across = item.length("across");
    notion.arrives = item.day("arrives");
    notion.shank = item.yes_no("shank").value.value_or(false);
    for (const Entry* one : item.values("bought")) {
      if (one->text == kToMeasure) {
        notion.bought_lengths.origin = notion.bought_number.origin = Origin::to_measure;
        continue;
      }
      const auto number = read_count(one->text, "bought");
      const auto length = read_length(one->text, "bought");
      if (number.ok()) {
        notion.bought_number = Given<std::int64_t>::written(notion.bought_number.value.value_or(0) + number.value(), one->at);
      } else if (length.ok()) {
        if (!notion.bought_lengths.known()) notion.bought_lengths = Given<std::vector<Length>>::written({}, one->at);
        if (!length.value().length.is_zero()) notion.bought_lengths.value->push_back(length.value().length);
      }
    }
    project.notions.push_back(std::move(notion));
  }
}

}  // namespace gownsheaf
