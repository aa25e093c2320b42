#include "packet/load_tables.h"

#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

const std::string kAbout = "about\u00A0";

class Loads {
 public:
  Loads(const ClosingPlan& plan, const LoadPlan& load, const std::string& noun, const FigureText& text, bool far)
      : plan_(plan), load_(load), noun_(noun), text_(text), far_(far), key_("closures/" + plan.closure + "/") {}

  std::vector<Block> all() {
    if (load_.zones.size() > 1) zones();
    one_opens();
    ways();
    matters();
    return std::move(out_);
  }

 private:
  bool has(const std::string& quantity) const { return text_.has(key_ + quantity); }
  // Under a head that says "about".
  std::string rough(const std::string& quantity) const {
    const std::string about = text_.about(key_ + quantity);
    return about.rfind(kAbout, 0) == 0 ? about.substr(kAbout.size()) : about;
  }
  Text length(const std::string& quantity) const { return text_.checking(key_ + quantity); }
  std::string nth(std::size_t i) const { return noun_ + "\u00A0" + whole_number(static_cast<std::int64_t>(i + 1)); }

  std::string many() const { return noun_ == "pair of eyelets" ? "pairs of eyelets" : noun_ + "s"; }

  void zones() {
    Table table;
    add_column(table, Column::Kind::words, "part of the edge", 0, true);
    add_column(table, Column::Kind::words, "goes round", far_ ? 110 : 90, false);
    add_column(table, Column::Kind::words, "from", far_ ? 90 : 70, false);
    add_column(table, Column::Kind::words, "to", far_ ? 90 : 70, false);
    add_column(table, Column::Kind::words, "pull, about", far_ ? 120 : 100, false);
    for (const LoadZone& z : load_.zones) {
      const std::string zone = "zone " + z.name + "/";
      Row row;
      row.cells.push_back({bold(capital(z.name))});
      row.cells.push_back({length(zone + "girth")});
      const auto place = [&](Length at) {
        return checking(text_of(at, text_.shown_in(), mark_step(text_.shown_in()), Rounding::nearest));
      };
      row.cells.push_back({place(z.starts)});
      row.cells.push_back({place(z.ends)});
      row.cells.push_back({words(rough(zone + "line load"))});
      table.rows.push_back(std::move(row));
    }
    out_.push_back(block(std::move(table)));
    out_.push_back(block(Gap{8}));
  }

  void one_opens() {
    if (!load_.gives_way || !has("if one opens")) return;
    Text said = bold("If one opens: ");
    const bool same = *load_.gives_way == *load_.neighbour;
    said =
        said + words("the worst is " + nth(*load_.gives_way) + "; " + (same ? "the other of its place" : nth(*load_.neighbour)) +
                     " then takes " + text_.about(key_ + "if one opens") + ", and one holds " + text_.about(key_ + "one holds") +
                     ", untested. ");
    said = said + words(load_.neighbour_takes.value <= load_.capacity.value
                            ? "It should hold until you can mend it."
                            : "It may open too, and the next after it: look at every one before each wearing.");
    out_.push_back(block(Paragraph{said, false}));
  }

  Text way_said(const WayToEase& w) const {
    const std::string way = "eased " + w.way + "/";
    if (w.way == "own band") return words("The skirt on a band of its own");
    if (w.way == "waist stay")
      return sentence_text(in_unit_of("A stay 1/2 in smaller, sewn at every bone, hooked first", text_.shown_in()), false);
    if (w.way == "second row") return words("A second row of " + many());
    if (w.way == "lacing") return words("Laced, eyelets on a strip, ") + length(way + "apart") + words(" apart");
    if (w.way == "closer" || w.way == "closer still")
      return words(text_.value(key_ + way + "places") + "\u00A0" + many() + ", ") + length(way + "apart") + words(" apart");
    Text out = words("Let out ") + length(way + "by") + words(" all round");
    if (w.way == "let out a band") out = out + words(", the least for a lower band");
    return out;
  }

  void ways() {
    if (load_.eased.empty()) return;
    Table table;
    add_column(table, Column::Kind::words, "what would ease it", 0, true);
    add_column(table, Column::Kind::words, "band", far_ ? 56 : 44, false);
    add_column(table, Column::Kind::words, "one takes, about", far_ ? 120 : 100, false);
    add_column(table, Column::Kind::words, "and may be asked", far_ ? 120 : 100, false);
    add_column(table, Column::Kind::words, "", far_ ? 80 : 62, false);
    const auto row = [&](Text what, const std::string& band, const std::string& takes, const std::string& asked, bool enough) {
      Row r;
      r.cells.push_back({std::move(what)});
      r.cells.push_back({words(band)});
      r.cells.push_back({words(takes)});
      r.cells.push_back({words(asked)});
      r.cells.push_back({enough ? bold("enough") : words("too much")});
      table.rows.push_back(std::move(r));
    };
    row(words("As it is"), load_.band, rough("per fastener"), rough("fastener may hold"),
        load_.fastener.value <= load_.holds.value);
    for (const WayToEase& w : load_.eased)
      row(way_said(w), w.band, rough("eased " + w.way + "/per fastener"), rough("eased " + w.way + "/may hold"), w.enough);
    out_.push_back(block(std::move(table)));
    out_.push_back(block(Gap{8}));
  }

  void matters() {
    if (load_.matters.empty()) return;
    Table table;
    add_column(table, Column::Kind::words, "what matters most, first", 0, true);
    add_column(table, Column::Kind::words, "may well be", far_ ? 160 : 130, false);
    add_column(table, Column::Kind::words, "one takes, about", far_ ? 150 : 130, false);
    for (const InputThatMatters& m : load_.matters) {
      Row row;
      row.cells.push_back({words(capital(m.input))});
      row.cells.push_back({words(m.range)});
      const std::string low = rough("varied " + m.input + "/low"), high = rough("varied " + m.input + "/high");
      row.cells.push_back({words(low == high ? low + " either way" : low + " to " + high)});
      table.rows.push_back(std::move(row));
    }
    out_.push_back(block(std::move(table)));
    out_.push_back(block(Gap{8}));
  }

  const ClosingPlan& plan_;
  const LoadPlan& load_;
  std::string noun_;
  const FigureText& text_;
  bool far_;
  std::string key_;
  std::vector<Block> out_;
};

}  // namespace

std::vector<Block> load_blocks(const ClosingPlan& plan, const LoadPlan& load, const std::string& noun, const FigureText& text,
                               bool pinned_up) {
  return Loads(plan, load, noun, text, pinned_up).all();
}

std::vector<Block> band_hold_blocks(const ClosingPlan& plan, const LoadPlan& load, const FigureText& text) {
  const std::string key = "closures/" + plan.closure + "/";
  std::vector<Block> out;
  if (text.has(key + "strap end")) {
    out.push_back(block(Paragraph{
        words("Each end of two straps carries " + text.about(key + "strap end") + ": anchor it in a seam or on a bone."),
        false}));
    return out;
  }
  if (!load.band_hold) return out;
  const BandHold& hold = *load.band_hold;
  Text said = bold("Does the band hold it up? ");
  if (hold.slides) {
    said = said + words("No: below the waist the hip gives it nothing to lie on. Straps carry it.");
  } else {
    said = said + words("Drawn to " + text.about(key + "band tension") + " it does, by friction on the slope of the hip; ") +
           text.checking(key + "band width") + words(" wide it then presses " + text.about(key + "band pressure") + ". ");
    if (hold.comfort)
      said = said + words(hold.pressure <= *hold.comfort ? "At that age " : "That is too much: at that age ") +
             words(text.about(key + "comfort line") + " is borne.");
    else said = said + words("Wearers bore about 27 mmHg at 20 years, 21 at 40, 15 at 60.");
    if (hold.pressure.value > 0 && (!hold.comfort || hold.pressure > *hold.comfort))
      said = said + words(" A wider band presses less; straps take it off the waist.");
  }
  out.push_back(block(Paragraph{said, false}));
  out.push_back(block(Paragraph{
      condensed(
          "An estimate: friction is common practice, and a waist is not round. Marks that stay twenty minutes: looser. Not for pregnancy, reflux, skin or nerve trouble; a "
          "clinician decides."),
      false}));
  return out;
}

}  // namespace gownsheaf
