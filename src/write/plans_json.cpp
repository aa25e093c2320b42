#include "write/plans_json.h"

namespace gownsheaf {
namespace {

// A length with its exact ticks and as it is printed. The rounding is the figures' own (length_text), so that a number
// here never differs from the same number on a sheet.
class Lengths {
 public:
  explicit Lengths(ShownIn shown_in) : shown_in_(shown_in) {}
  Json cut(Length length) const { return of(length, Shown::cut, Action::recut); }
  Json mark(Length length) const { return of(length, Shown::mark, Action::remark); }
  Json pleat(Length length) const { return of(length, Shown::pleat_mark, Action::remark); }
  Json to_buy(Length length) const { return of(length, Shown::cloth, Action::buy); }
  Json on_shelf(Length length) const { return of(length, Shown::cloth, Action::none); }
  Json box(const Box& b) const {
    return {{"x", mark(b.x)}, {"y", mark(b.y)}, {"width", mark(b.width)}, {"height", mark(b.height)}};
  }
  Json marks(const std::vector<Length>& lengths) const {
    Json all = Json::array();
    for (const Length length : lengths) all.push_back(mark(length));
    return all;
  }

 private:
  Json of(Length length, Shown shown, Action action) const {
    Figure f;
    f.value = length;
    f.shown = shown;
    f.action = action;
    return {{"ticks", length.in_ticks()}, {"printed", length_text(f, shown_in_).plain()}};
  }
  ShownIn shown_in_;
};

// A sentence of a step as plain text, its figures printed in place.
std::string plain(const Say& say, const JsonScope& scope) {
  std::string text;
  for (const SayPart& part : say) {
    text += part.words;
    if (part.figure.empty()) continue;
    const Figure& figure = scope.figures.at(part.figure);
    text += scope.hide_private && figure.is_private ? "(left out)" : plain_text(figure, scope.shown_in);
  }
  return text;
}

void put_words(Json& object, const char* name, const std::string& words) {
  if (!words.empty()) object[name] = words;
}

Json cut_piece(const CutPiece& piece, const Lengths& lengths) {
  Json json{{"piece", piece.piece},
            {"copies", piece.copies},
            {"pair", piece.pair},
            {"on the fold", piece.on_fold},
            {"full width", piece.full_width},
            {"cut width", lengths.cut(piece.across)},
            {"cut length", lengths.cut(piece.along)},
            {"grain", piece.grain}};
  put_words(json, "allowances", piece.allowances);
  put_words(json, "figures", piece.key);
  if (piece.at.line > 0) json["line"] = piece.at.line;
  return json;
}

Json strip_json(const LaidStrip& strip, const Lengths& lengths) {
  Json placed = Json::array(), left_over = Json::array();
  for (const LaidPiece& piece : strip.placed) {
    Json laid{{"piece", piece.piece}, {"copy", piece.copy}, {"turned", piece.turned}};
    if (piece.also > 0) laid["also copy"] = piece.also;
    if (piece.on_fold) laid["on the fold"] = true;
    if (piece.bias) laid["on the bias"] = true;
    if (piece.mirrored) laid["other hand"] = true;
    if (piece.top_at_right) laid["top at right"] = true;
    laid.update(lengths.box(piece.at));
    placed.push_back(std::move(laid));
  }
  for (const Box& box : strip.left_over) left_over.push_back(lengths.box(box));
  return {{"name", strip.name},
          {"open", strip.open},
          {"folded", strip.folded == Folded::no           ? "no"
                     : strip.folded == Folded::lengthwise ? "lengthwise"
                                                          : "crosswise"},
          {"starts at", lengths.cut(strip.starts_at)},
          {"width", lengths.mark(strip.width)},
          {"usable width", lengths.mark(strip.usable_width)},
          {"selvage", lengths.mark(strip.selvage)},
          {"length", lengths.cut(strip.length)},
          {"used", lengths.cut(strip.used)},
          {"placed", std::move(placed)},
          {"left over", std::move(left_over)},
          {"straight cuts", lengths.marks(strip.straight_cuts)}};
}

}  // namespace

Json may_cut_json(const Plans& plans, const JsonScope&) {
  Json all = Json::array();
  for (const CutVerdict& verdict : plans.may_cut) {
    const char* answer = verdict.verdict == MayCut::yes ? "yes" : verdict.verdict == MayCut::yes_after ? "yes, after" : "no";
    Json json{{"cloth", verdict.cloth}, {"parts", verdict.parts}, {"answer", answer}};
    put_words(json, "after", verdict.after);
    put_words(json, "reason", verdict.reason);
    put_words(json, "reason figure", verdict.reason_figure);
    put_words(json, "decided", verdict.decided);
    all.push_back(std::move(json));
  }
  return all;
}

Json lays_json(const Plans& plans, const JsonScope& scope) {
  const Lengths lengths(scope.shown_in);
  Json all = Json::array();
  for (const LayPlan& lay : plans.lays) {
    Json cut = Json::array(), bought = Json::array();
    for (const CutPiece& piece : lay.cut) cut.push_back(cut_piece(piece, lengths));
    for (const LaidStrip& strip : lay.on_bought) bought.push_back(strip_json(strip, lengths));
    Json json{{"cloth", lay.cloth},
              {"one way", lay.one_way},
              {"no lay can be shorter", lengths.cut(lay.bound)},
              {"needed", lengths.to_buy(lay.needed)}};
    if (lay.bought) json["bought"] = lengths.on_shelf(*lay.bought);
    if (lay.spare) json["spare"] = lengths.on_shelf(*lay.spare);
    json["fits what was bought"] = lay.fits_bought;
    json["left out"] = lay.left_out;
    json["cutting order"] = std::move(cut);
    json["to buy"] = strip_json(lay.to_buy, lengths);
    if (lay.opened) json["to buy, in one layer"] = strip_json(*lay.opened, lengths);
    if (lay.cut_short) json["cut short"] = "the search was stopped before its end; this lay can be had no second time";
    if (!lay.pieced.empty()) json["pieced"] = lay.pieced;
    if (!lay.not_kept.empty()) json["not kept"] = lay.not_kept;
    for (const MissingPiece& missing : lay.missing)
      json["missing"].push_back({{"piece", missing.piece}, {"figures", missing.key}, {"on", missing.on}});
    for (const OtherWay& way : lay.other_ways) json["other ways"].push_back({{"how", way.words}, {"goes", way.goes}});
    json["on bought"] = std::move(bought);
    all.push_back(std::move(json));
  }
  return all;
}

Json pleats_json(const Plans& plans, const JsonScope& scope) {
  const Lengths lengths(scope.shown_in);
  Json all = Json::array();
  for (const PleatPlan& run : plans.pleats) {
    Json marks = Json::array();
    for (const PleatMark& mark : run.marks) {
      marks.push_back({{"pleat", mark.pleat},
                       {"fold", lengths.pleat(mark.fold)},
                       {"lay on", lengths.pleat(mark.lay_on)},
                       {"edge", lengths.pleat(mark.edge)}});
    }
    Json json{{"run", run.run},
              {"kind", run.kind},
              {"half", run.half},
              {"flat", lengths.pleat(run.flat)},
              {"finished", lengths.pleat(run.finished)},
              {"plus", lengths.pleat(run.plus)},
              {"pleats overlap", run.overlaps},
              {"toward", run.toward},
              {"measured from", run.measured_from},
              {"marks", std::move(marks)},
              {"seams at", lengths.marks(run.seams_at)}};
    if (!run.marks.empty()) {  // gathers and cartridge pleats have none of these
      json["count"] = run.count;
      json["depth"] = lengths.pleat(run.depth);
      json["visible"] = lengths.pleat(run.visible);
    }
    if (run.at.line > 0) json["line"] = run.at.line;
    all.push_back(std::move(json));
  }
  return all;
}

Json work_json(const Plans& plans, const JsonScope& scope) {
  Json all = Json::array();
  for (const PlannedStep& step : plans.work) {
    Json json{{"number", step.number}, {"id", step.id}};
    put_words(json, "item", step.item);
    json["act"] = plain(step.act, scope);
    json["done"] = step.done;
    put_words(json, "reason", plain(step.reason, scope));
    Json shows = Json::array();
    for (const Say& say : step.shows) shows.push_back(plain(say, scope));
    if (!shows.empty()) json["shows"] = std::move(shows);
    put_words(json, "cannot be undone", step.cannot_undo);
    put_words(json, "gate", step.gate);
    if (!step.holds.empty()) json["holds"] = step.holds;
    json["after"] = step.hard_after;
    if (!step.uses.empty()) json["uses"] = step.uses;
    if (!step.needs.empty()) json["needs"] = step.needs;
    if (step.conditional) json["if"] = step.condition;
    put_words(json, "sheet", step.sheet);
    if (step.at.line > 0) json["line"] = step.at.line;
    all.push_back(std::move(json));
  }
  return all;
}

}  // namespace gownsheaf
