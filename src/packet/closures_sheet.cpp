// One closing: how many, how far apart, where from the top; the cut edge of each side; other kinds beside it.
#include <algorithm>

#include "packet/closing_drawing.h"
#include "packet/sheets.h"
#include "packet/wording.h"

namespace gownsheaf {
namespace {

struct Words {
  std::string one, many;
};

// What one place is called.
Words words_of(const std::string& fasten) {
  if (fasten == "buttons") return {"button", "buttons"};
  if (fasten == "snaps") return {"snap", "snaps"};
  if (fasten == "lacing") return {"pair of eyelets", "pairs of eyelets"};
  if (fasten == "buckle") return {"buckle", "buckles"};
  if (fasten == "ties") return {"pair of ties", "pairs of ties"};
  if (fasten == "busk") return {"stud of the busk", "studs of the busk"};
  if (fasten == "hooks and bars") return {"hook with its bar", "hooks with their bars"};
  if (fasten == "hooks and loops") return {"hook with its loop", "hooks with their loops"};
  return {"hook with its eye", "hooks with their eyes"};
}

class ClosuresSheet {
 public:
  ClosuresSheet(const PacketInput& input, const ClosingPlan& plan)
      : input_(input), plan_(plan), text_(figure_text_of(input)), key_("closures/" + plan.closure + "/"),
        closure_(input.project.closure(plan.closure)) {}

  Sheet made() const {
    Sheet sheet;
    sheet.section = Section::close;
    sheet.answer = answer();
    sheet.blocks = blocks(true, false);
    // Where it takes a page more: the wall does without the comparison, which the binder has; then the drawing is a scale smaller.
    const bool may_lack_it = pinned_up(input_) && !plan_.compared.empty();
    if (may_lack_it) sheet.shorter.push_back([self = *this] { return self.blocks(false, false); });
    if (!plan_.fasteners.empty()) {
      sheet.shorter.push_back([self = *this] { return self.blocks(true, true); });
      if (may_lack_it) sheet.shorter.push_back([self = *this] { return self.blocks(false, true); });
    }
    return sheet;
  }

 private:
  std::vector<Block> blocks(bool compared, bool small_drawing) const {
    std::vector<Block> all;
    if (!plan_.fasteners.empty()) {
      all.push_back(block(draw_closing(plan_, text_, input_.typesetter, small_drawing)));
      all.push_back(block(Paragraph{how_to_measure(), true}, true));
      all.push_back(block(places()));
    }
    if (!plan_.cut_sides.empty()) {
      all.push_back(heading("Where each side is cut"));
      all.push_back(block(laps()));
      const Text sides = pieces_that_close();
      if (!sides.empty()) all.push_back(paragraph(sides));
    }
    const Text more = what_it_takes();
    if (!more.empty()) {
      all.push_back(heading("What it takes"));
      all.push_back(paragraph(more, !pinned_up(input_)));
    }
    if (compared && !plan_.compared.empty()) {
      all.push_back(heading("The same edge closed otherwise"));
      all.push_back(block(comparison()));
      all.push_back(paragraph(condensed(
          "Minutes are common practice for a practised home maker, untested: they compare kinds, they do not plan an evening.")));
    }
    return all;
  }

  bool has(const std::string& quantity) const { return text_.has(key_ + quantity); }
  Text length(const std::string& quantity) const { return text_.measured(key_ + quantity); }
  std::string edge() const { return plan_.edge.empty() ? "the edge" : plan_.edge; }

  Text answer() const {
    if (plan_.fasteners.empty()) {
      if (has("lace length"))
        return words("A cord of ") + length("lace length") + words(" runs along the ") + length("edge length") +
               words(" of " + edge() + ".");
      return words("What stands on " + edge() + " is not settled yet.");
    }
    const Words w = words_of(plan_.fasten);
    const std::int64_t n = text_.count(key_ + "count");
    Text out = words(text_.value(key_ + "count") + "\u00A0" + (n == 1 ? w.one : w.many) + " on ") + length("edge length") +
               words(" of " + edge());
    if (plan_.rows > 1) out = out + words(", in " + whole_number(plan_.rows) + " rows");
    if (has("pitch widest"))
      out =
          out + (plan_.gaps.size() > 1 ? words(", nowhere more than ") : words(", ")) + length("pitch widest") + words(" apart");
    std::vector<std::string> held;
    for (const Fastener& f : plan_.fasteners)
      if (!f.level.empty()) held.push_back("the " + f.level);
    if (!held.empty()) out = out + words(". One is at " + listed(held));
    if (has("lace length")) out = out + words(". The lace is ") + length("lace length") + words(" with its ends");
    return out + words(".");
  }

  Text how_to_measure() const {
    Text out = bold("Measure every place from the top of the edge.") + words(" Never from the one before.");
    if (has("set back") && !plan_.set_back.is_zero())
      out = out + words(" They sit ") + length("set back") + words(" behind the edge.");
    if (has("buttonhole")) {
      out = out + words(" Each buttonhole is ") + length("buttonhole") + words(" long, ");
      if (has("buttonhole begins"))
        out = out + words("across the edge, and begins ") + length("buttonhole begins") +
              words(" past the lap line toward the edge.");
      else out = out + words("along the lap line.");
    }
    if (std::any_of(plan_.fasteners.begin(), plan_.fasteners.end(), [](const Fastener& f) { return f.other_way; }))
      out = out + words(" Hook and eye change sides in turn.");
    if (plan_.fasten.rfind("hooks", 0) == 0 && !plan_.overlapping && (closure_ == nullptr || !closure_->upper_side.known()))
      out = out + condensed(" Which side takes the hooks is not written: the wearer\u2019s right, maker\u2019s default.");
    for (const auto& [level, part] : plan_.closer) {
      const auto place = [&](Length at) {
        return checking(text_of(at, text_.shown_in(), mark_step(text_.shown_in()), Rounding::nearest));
      };
      out = out + words(" Near the " + level + " they come closer, from ") + place(part.first) + words(" to ") +
            place(part.second) + words(" down.");
    }
    return out;
  }

  Table places() const {
    const bool far = pinned_up(input_);
    const std::string unit = unit_of(text_.shown_in());
    const bool hooked = plan_.fasten.rfind("hooks", 0) == 0;
    Table table;
    table.heavy_every_third = true;
    add_column(table, Column::Kind::tick, "", far ? 34 : 24, false);
    add_column(table, Column::Kind::words, plan_.fasten == "lacing" ? "eyelet" : "no.", far ? 60 : 50, true);
    add_column(table, Column::Kind::length, "from the top, " + unit, far ? 130 : 110, true);
    if (!plan_.other_side.empty()) add_column(table, Column::Kind::length, "other side, " + unit, far ? 120 : 100, true);
    if (hooked) add_column(table, Column::Kind::words, "the hook is on", far ? 120 : 110, false);
    add_column(table, Column::Kind::words, "place", 0, false);
    for (std::size_t i = 0; i < plan_.fasteners.size(); ++i) {
      const Fastener& f = plan_.fasteners[i];
      const std::string number = whole_number(static_cast<std::int64_t>(i + 1));
      Row row;
      row.cells.push_back({tick_box()});
      row.cells.push_back({bold(number)});
      row.cells.push_back({text_.cell(key_ + "fastener " + number, true)});
      if (!plan_.other_side.empty()) row.cells.push_back({text_.cell(key_ + "other side " + number, true)});
      if (hooked) row.cells.push_back({words(hook_side(f.other_way))});
      row.cells.push_back({(f.level.empty() ? Text{} : bold(f.level)) + text_.then_was(key_ + "fastener " + number)});
      table.rows.push_back(std::move(row));
    }
    return table;
  }

  // Which side carries the hook: the upper side in a lap; edge to edge the wearer's right unless it is written.
  std::string hook_side(bool other_way) const {
    std::string upper = closure_ != nullptr && closure_->upper_side.known() ? *closure_->upper_side : "";
    if (upper.empty())
      return plan_.overlapping ? (other_way ? "under side" : "upper side")
                               : (other_way ? "wearer\u2019s left" : "wearer\u2019s right");
    if (other_way) upper = upper == "left" ? "right" : "left";
    return "wearer\u2019s " + upper;
  }

  Table laps() const {
    const bool far = pinned_up(input_);
    const std::string unit = unit_of(text_.shown_in());
    const bool faced = has("seam with facing");
    Table table;
    add_column(table, Column::Kind::words, "side", 0, true);
    add_column(table, Column::Kind::length, "cut edge past meeting line, " + unit, far ? 190 : 140, true);
    add_column(table, Column::Kind::length, "lap, " + unit, far ? 66 : 70, false);
    add_column(table, Column::Kind::length, (faced ? "seam with facing, " : "turned back, ") + unit, far ? 138 : 100, false);
    for (std::size_t i = 0; i < plan_.cut_sides.size(); ++i) {
      const std::string& side = plan_.cut_sides[i];
      const bool under = side == "under side" || (plan_.cut_sides.size() == 2 && i == 1);
      Row row;
      row.cells.push_back({words(capital(side)) + text_.then_was(key_ + "cut past meeting line/" + side)});
      row.cells.push_back({text_.cell(key_ + "cut past meeting line/" + side, true)});
      row.cells.push_back({text_.cell(key_ + (under ? "underlap" : "lap"), false)});
      row.cells.push_back({text_.cell(key_ + (faced ? "seam with facing" : "turn back"), false)});
      table.rows.push_back(std::move(row));
    }
    return table;
  }

  Text pieces_that_close() const {
    if (closure_ == nullptr || closure_->sides.empty()) return {};
    Text out = words("The cutting list holds this in the cut width of " + listed(closure_->sides) + ".");
    if (closure_->sides.size() == 1 && plan_.lap != plan_.underlap)
      out = out + words(" Both sides are cut alike, as far as the longer; trim the other.");
    return out;
  }

  Text what_it_takes() const {
    Text out;
    const auto add = [&](const Text& sentence) { out = out + (out.empty() ? Text{} : words(" ")) + sentence; };
    const std::string alike = plan_.times > 1 ? ", for " + counted(plan_.times, "closing", "closings alike") : "";
    if (!plan_.with.empty() && has("in all") && plan_.fasten != "ties")
      add(bold(capital(plan_.with) + ": " + text_.value(key_ + "in all") + (plan_.fasten == "lacing" ? "\u00A0eyelets" : "")) +
          words(alike + "."));
    else if (has("in all")) {
      const Words w = words_of(plan_.fasten);
      const std::string called = plan_.fasten == "lacing" ? "eyelets" : text_.count(key_ + "in all") == 1 ? w.one : w.many;
      add(words(text_.value(key_ + "in all") + "\u00A0" + called + " in all" + alike + "."));
    }
    if (has("tie length"))
      add(bold(text_.value(key_ + "ties") + "\u00A0ties") + words(", each cut ") + length("tie length") + words(": ") +
          text_.checking(key_ + "tie free") +
          sentence_text(in_unit_of(" free to tie, 2 in sewn down beneath the edge, 1/2 in hemmed; ", text_.shown_in()), false) +
          text_.checking(key_ + "tape length") + words(" of tape in all."));
    if (has("lace length"))
      add(words(plan_.fasten == "lacing" ? "Lace, edges " : "Cord: ") +
          (has("gap") ? length("gap") + words(" apart: ") : Text{}) + length("lace length") + words("."));
    if (has("backing width") && closure_ != nullptr)
      add(words("Back the edge with a strip of " + *closure_->backed_with + ", ") + length("backing width") +
          words(" wide, on the straight grain, top to foot" + where_cut("backing") + "."));
    if (has("guard width") && closure_ != nullptr)
      add(words("A guard" + (closure_->guard->from.empty() ? "" : " of " + closure_->guard->from) + ", ") +
          length("guard width") + words(" wide when finished, lies behind it" + where_cut("guard") + "."));
    if (has("stitches each") && plan_.fasten.rfind("hooks", 0) == 0)
      add(words(text_.value(key_ + "stitches each") + "\u00A0stitches hold each half."));
    return out;
  }

  std::string where_cut(const std::string& strip) const {
    const std::string name = plan_.closure + " " + strip;
    return input_.project.piece(name) != nullptr ? "; the cutting list has it as " + name : "";
  }

  Table comparison() const {
    const bool far = pinned_up(input_);
    Table table;
    add_column(table, Column::Kind::words, "closed with", 0, true);
    add_column(table, Column::Kind::count, "places", far ? 80 : 70, false);
    add_column(table, Column::Kind::count, "pieces to sew", far ? 110 : 100, true);
    add_column(table, Column::Kind::count, "minutes, about", far ? 120 : 110, false);
    for (const std::string& kind : plan_.compared) {
      const std::string compare = key_ + "compare " + kind + "/";
      Row row;
      row.cells.push_back({words(kind) + (kind == plan_.fasten ? condensed(", as written") : Text{})});
      row.cells.push_back({words(text_.value(compare + "places"))});
      row.cells.push_back({words(text_.value(compare + "pieces"))});
      row.cells.push_back({text_.has(compare + "minutes") ? words(text_.value(compare + "minutes")) : words("\u2013")});
      table.rows.push_back(std::move(row));
    }
    return table;
  }

  const PacketInput input_;  // a shorter form outlives the call
  const ClosingPlan& plan_;
  FigureText text_;
  std::string key_;
  const Closure* closure_;
};

}  // namespace

Sheet closures_sheet(const PacketInput& input, const ClosingPlan& plan) { return ClosuresSheet(input, plan).made(); }

}  // namespace gownsheaf
