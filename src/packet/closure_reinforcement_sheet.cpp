// How one closing is built so that it holds: how the weight is carried, what pulls, and the notes of its band and kind.
#include <algorithm>

#include "packet/load_drawing.h"
#include "packet/load_tables.h"
#include "packet/sheets.h"
#include "packet/wording.h"
#include "templates/say.h"

namespace gownsheaf {
namespace {

class Reinforcement {
 public:
  Reinforcement(const PacketInput& input, const ClosingPlan& plan)
      : input_(input), plan_(plan), rules_(input.closing == nullptr ? none_ : *input.closing), text_(figure_text_of(input)),
        key_("closures/" + plan.closure + "/") {
    for (const LoadPlan& load : input.plans.loads)
      if (same_name(load.closure, plan.closure)) load_ = &load;
    for (const Strain& strain : input.project.strain)
      if (same_name(strain.closure, plan.closure)) strain_ = &strain;
  }

  Sheet made() {
    Sheet sheet;
    sheet.section = Section::close;
    const ClosingBand* band = load_ == nullptr ? nullptr : rules_.band(load_->band);
    sheet.answer = answer(band);
    carried(sheet);
    if (load_ != nullptr && input_.set.private_shown) pull(sheet);
    if (band != nullptr) build(sheet, *band);
    notes(sheet, band);
    inspect(sheet);
    cautions(sheet);
    return sheet;
  }

 private:
  Text said_plainly(const std::string& s) const { return sentence_text(in_unit_of(s, text_.shown_in()), false); }
  bool has(const char* quantity) const { return text_.has(key_ + quantity); }

  Text answer(const ClosingBand* band) const {
    if (band == nullptr)
      return sentence_text(
          "How hard it pulls is not reckoned: say how close it is worn under `strain`. The notes hold for any pull.", false);
    if (!in_rows()) return words("Band " + band->name + ", " + band->words + ": on ") + said_plainly(band->edge + ".");
    return words("Band " + band->name + ", " + band->words + ": " + fasteners() + " no further than ") +
           measured(text_of(band->pitch, text_.shown_in(), mark_step(text_.shown_in()), Rounding::down)) +
           said_plainly(" apart, on " + band->edge + ".");
  }
  // Hooks and eyelets keep the band's distance; buttons, ties and the like keep their own.
  bool in_rows() const { return plan_.fasten == "lacing" || plan_.fasten.rfind("hooks", 0) == 0; }
  bool on_an_edge() const { return plan_.fasten != "drawstring" && plan_.fasten != "ties"; }
  std::string fasteners() const {
    return plan_.fasten == "lacing" ? "eyelets" : plan_.fasten.rfind("hooks", 0) == 0 ? "hooks" : plan_.fasten;
  }

  void carried(Sheet& sheet) const {
    if (strain_ == nullptr || !strain_->skirt_hangs_from.known() || *strain_->skirt_hangs_from == "nothing") return;
    sheet.blocks.push_back(heading("How the weight is carried"));
    for (const CarriedRule& rule : rules_.carried)
      if (rule.hangs_from == *strain_->skirt_hangs_from) sheet.blocks.push_back(paragraph(said_plainly(rule.say)));
    if (text_.has("skirt/weight")) {
      Text weight = words("The skirt weighs " + text_.about("skirt/weight"));
      const bool weighed = input_.project.skirt && input_.project.skirt->weighs.known();
      weight = weight + sentence_text(weighed ? ", on the scale."
                                              : ", an estimate from its cloth: weigh it and write `weighs` under `skirt`.",
                                      false);
      for (const AlsoHangs& also : strain_->also_hangs)
        weight = weight + words(" The " + also.item + " that hangs with it weighs " +
                                plain_text(Value(also.weighs), text_.shown_in()) + ".");
      sheet.blocks.push_back(paragraph(weight));
    }
    if (load_ != nullptr && input_.set.private_shown)
      for (Block& b : band_hold_blocks(plan_, *load_, text_)) sheet.blocks.push_back(std::move(b));
    if (*strain_->skirt_hangs_from == "own band" || rules_.carried.empty()) return;
    sheet.blocks.push_back(paragraph(said_plainly(rules_.carried.front().say)));
  }

  bool nothing_pulls() const {
    const Figure* most = text_.figures().find(key_ + "per fastener/high");
    const Force* force = most == nullptr ? nullptr : std::get_if<Force>(&most->value);
    return force != nullptr && force->value <= 0;
  }

  void pull(Sheet& sheet) const {
    sheet.blocks.push_back(heading("Pull: an estimate"));
    if (nothing_pulls()) {
      sheet.blocks.push_back(paragraph(
          words(
              "None along this edge, not with a deep breath either, and none if one of the inputs is another: it is worn looser "
              "than what it goes round. A pull at one is asked to stay under ") +
          words(text_.about(key_ + "fastener may hold") + ", which is untested.")));
      sheet.blocks.push_back(paragraph(condensed(assumed())));
      return;
    }
    Text said = words("Along the edge " + text_.about(key_ + "line load at rest") + " at rest, " +
                      text_.about(key_ + "line load").substr(std::string("about\u00A0").size()) +
                      " with a deep breath, in movement or sitting. ");
    said = said + words("The most that one takes: " + text_.about(key_ + "per fastener") + ", number " +
                        whole_number(static_cast<std::int64_t>(load_->most + 1)) + " from the top; " + rough("per fastener/low") +
                        " to " + rough("per fastener/high") +
                        " when one of the inputs is another. One should be asked for no more than " +
                        text_.about(key_ + "fastener may hold") + ", which is untested.");
    sheet.blocks.push_back(paragraph(said));
    sheet.blocks.push_back(block(draw_load(plan_, *load_, text_, input_.typesetter)));
    for (Block& b : load_blocks(plan_, *load_, one(), text_, pinned_up(input_))) sheet.blocks.push_back(std::move(b));
    sheet.blocks.push_back(paragraph(condensed(assumed())));
  }

  std::string rough(const std::string& quantity) const {
    return text_.about(key_ + quantity).substr(std::string("about\u00A0").size());
  }
  std::string one() const {
    if (plan_.fasten == "lacing") return "pair of eyelets";
    if (plan_.fasten.rfind("hooks", 0) == 0) return "hook";
    return plan_.fasten == "busk"        ? "stud"
           : plan_.fasten.ends_with("s") ? plan_.fasten.substr(0, plan_.fasten.size() - 1)
                                         : plan_.fasten;
  }

  std::string assumed() const {
    std::string out = "It stands on this: ";
    out += load_->by_study ? "the pressure of corsets " + std::string(word_for(*input_.project.rules.corset_pressure)) +
                                 ", as chosen under rules"
           : strain_->pressure.known() ? std::string("the pressure written")
                                       : std::string("how much smaller it is than the body it goes round");
    out += ", worn over " +
           (strain_->over.known() ? (*strain_->over == "body" ? std::string("the body") : *strain_->over) : "the body");
    out += "; breath at the " + *strain_->breathes_at + "; " + *strain_->moves;
    out += "; the skirt hangs from " + *strain_->skirt_hangs_from +
           ". A round waist and an even pull are assumed: bands only, not a test.";
    return out;
  }

  void build(Sheet& sheet, const ClosingBand& band) const {
    sheet.blocks.push_back(heading("The edge"));
    Table table;
    add_column(table, Column::Kind::words, "part", 130, true);
    add_column(table, Column::Kind::words, "how, for band " + band.name, 0, false);
    const auto row = [&](const std::string& part, Text how) {
      Row r;
      r.cells.push_back({bold(part)});
      r.cells.push_back({std::move(how)});
      table.rows.push_back(std::move(r));
    };
    row("beneath", said_plainly(capital(band.edge)));
    row("stitched", words(counted(band.rows, "row", "rows")));
    row("bones", words(capital(band.bones)));
    if (!in_rows()) {
      if (has("pitch widest")) row("apart", text_.measured(key_ + "pitch widest") + words(" at the widest"));
      sheet.blocks.push_back(block(std::move(table)));
      return;
    }
    Text apart = measured(text_of(band.pitch, text_.shown_in(), mark_step(text_.shown_in()), Rounding::down)) + words(" at most");
    if (has("pitch widest")) apart = apart + words("; here ") + text_.measured(key_ + "pitch widest") + words(" at the widest");
    row("apart", apart);
    sheet.blocks.push_back(block(std::move(table)));
  }

  // The note's words with its figures set in; its plain words when one of them is not there.
  Text said(const ClosingNote& note) const {
    const SayRead read = read_say(note.say);
    Text out;
    for (const SayPiece& piece : read.pieces) {
      if (!piece.reference) {
        out = out + said_plainly(piece.text);
        continue;
      }
      const SayReference r = read_reference(piece.text);
      if (r.quantity.empty()) {
        out = out + words(plan_.closure);
      } else if (!has(r.quantity.c_str())) {
        return said_plainly(note.plainly);
      } else if (text_.figures().length(key_ + r.quantity)) {
        out = out + text_.measured(key_ + r.quantity);
      } else {
        out = out + words(text_.value(key_ + r.quantity));
      }
    }
    return out;
  }

  void notes(Sheet& sheet, const ClosingBand* band) const {
    bool first = true;
    for (const ClosingNote& note : rules_.notes) {
      if (note.fasten != "any" && note.fasten != plan_.fasten) continue;
      if (!note.from.empty() && !on_an_edge()) continue;
      if (!note.from.empty() && band != nullptr && band->name < note.from) continue;
      if (first) sheet.blocks.push_back(heading("Sewing it on"));
      first = false;
      PairRow row;
      row.left = bold(note.about);
      row.right = said(note);
      sheet.blocks.push_back(block(std::move(row)));
    }
    if (!first) std::get<PairRow>(sheet.blocks.back().what).last = true;
  }

  void inspect(Sheet& sheet) const {
    if (rules_.inspect.empty()) return;
    sheet.blocks.push_back(heading("After wearing, look for"));
    for (const ClosingInspection& line : rules_.inspect)
      if (line.fasten.empty() || std::find(line.fasten.begin(), line.fasten.end(), plan_.fasten) != line.fasten.end())
        sheet.blocks.push_back(paragraph(tick_box() + words(" ") + said_plainly(line.say)));
    sheet.blocks.push_back(paragraph(words("Mend what you find, and build that place one band stronger.")));
  }

  void cautions(Sheet& sheet) const {
    const bool pulls = load_ != nullptr && load_->band >= "R3";
    if (pulls)
      sheet.blocks.push_back(paragraph(
          bold("Care. ") +
          words(
              "Pain, numbness, faintness or a breath that cannot be drawn: open it now. First wearing an hour; loosen to eat and "
              "to travel. A clinician decides where there is illness, pregnancy or a port or pump; this is not medical advice.")));
    if (plan_.fasten == "lacing" || plan_.fasten == "busk")
      sheet.blocks.push_back(paragraph(
          bold("Care. ") +
          words("Awl and setter: off the lap, hands clear, eyes covered when metal is set; the tool’s own leaflet decides.")));
    sheet.blocks.push_back(paragraph(
        condensed("Bands, distances and capacities are common practice, untested; docs/sources.md names what was read.")));
  }

  const PacketInput& input_;
  const ClosingPlan& plan_;
  const ClosingRules none_;
  const ClosingRules& rules_;
  FigureText text_;
  std::string key_;
  const LoadPlan* load_ = nullptr;
  const Strain* strain_ = nullptr;
};

}  // namespace

Sheet closure_reinforcement_sheet(const PacketInput& input, const ClosingPlan& plan) { return Reinforcement(input, plan).made(); }

}  // namespace gownsheaf
