// The sums of folded runs; the formulas stand in pleats.h. Tests: tests/calculate/pleats_test.cpp.
//
// How a run is settled. W is the flat width less `plus`, F the finished width, k the depths of cloth that one pleat takes (folds_under):
//   1. the count: as written; else (W - F) / (k d), which must come out whole; else F / visible or W / (visible + k d),
//      rounded to the nearest, a tie to fewer: there `visible` is a wish; else F (fullness - 1) / (k d), rounded likewise:
//      there `fullness` is the wish;
//   2. what is still open of F, W and d, from W = F + k n d and F = n visible; `fullness` only where nothing else says it;
//   3. whatever was written besides must agree with what follows, exactly or to the step that pleats are printed in.
#include "calculate/pleats.h"

#include <vector>

#include "calculate/exact.h"

namespace gownsheaf {
namespace {

constexpr std::int64_t kMostPleats = 2000;

struct Known {
  std::optional<Exact> flat, finished, depth, visible, fullness;  // flat: less plus
  std::optional<std::int64_t> count;
};

enum class CountBy { written, take_up, wish, fullness };

struct Settled {
  Exact flat, finished;
  std::int64_t count = 0;
  CountBy by = CountBy::written;
  bool rounded = false;
};

// The count and the two widths, or nothing when too little is known. Fullness is looked at in a second round only.
std::optional<Settled> settle(Known k, std::int64_t folds, bool by_fullness) {
  const Exact under = folds;
  const bool flat_said = k.flat.has_value(), finished_said = k.finished.has_value();
  if (by_fullness && k.fullness) {
    if (!k.finished && k.count && k.visible) k.finished = Exact(*k.count) * *k.visible;
    if (!k.finished && !k.flat && k.count && k.depth) k.finished = under * Exact(*k.count) * *k.depth / (*k.fullness - Exact(1));
    if (k.finished && !k.flat) k.flat = *k.finished * *k.fullness;
    if (k.flat && !k.finished) k.finished = *k.flat / *k.fullness;
  }
  Settled s;
  if (k.count) {
    s.count = *k.count;
  } else if (k.flat && k.finished && k.depth) {
    const Exact n = (*k.flat - *k.finished) / (under * *k.depth);
    s.count = n.nearest_tie_down();
    s.by = flat_said && finished_said ? CountBy::take_up : CountBy::fullness;
    s.rounded = !n.whole();
  } else if (k.visible && (k.finished || (k.flat && k.depth))) {
    const Exact n = k.finished ? *k.finished / *k.visible : *k.flat / (*k.visible + under * *k.depth);
    s.count = n.nearest_tie_down();
    s.by = CountBy::wish;
    s.rounded = !n.whole();
  } else {
    return std::nullopt;
  }
  if (s.count < 1) s.count = 1;
  const Exact n = s.count;
  if (s.by == CountBy::fullness) (flat_said ? k.finished : k.flat).reset();  // follows from the whole count again
  if (!k.finished) {
    if (k.flat && k.depth) k.finished = *k.flat - under * n * *k.depth;
    else if (k.count && k.visible) k.finished = n * *k.visible;
    else return std::nullopt;
  }
  if (!k.flat) {
    if (!k.depth) return std::nullopt;
    k.flat = *k.finished + under * n * *k.depth;
  }
  s.flat = *k.flat;
  s.finished = *k.finished;
  return s;
}

std::string in_order(const std::vector<std::string>& words, const std::string& last_joint) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) out += (i == 0 ? "" : i + 1 == words.size() ? last_joint : ", ") + words[i];
  return out;
}

struct Speaker {
  std::string run;
  ShownIn in;
  std::string len(Exact e) const { return text_of(e.to_length(), in, pleat_step(in), Rounding::nearest).plain(); }
  std::string pleats(std::int64_t n) const { return whole_number(n) + (n == 1 ? " pleat" : " pleats"); }
};

PleatFault too_few(const PleatInput& input, const Known& known, std::int64_t folds, const Speaker& say) {
  // What one further key would settle it? Any value will do to find out.
  std::vector<std::string> one, open;
  const auto try_key = [&](const char* word, bool has, Known with) {
    if (has) return;
    open.emplace_back(word);
    if (settle(with, folds, false) || settle(with, folds, true)) one.emplace_back(word);
  };
  Known w = known;
  w.count = 2;
  try_key("count", known.count.has_value(), w);
  w = known;
  w.depth = Exact(1);
  try_key("depth", known.depth.has_value(), w);
  w = known;
  w.visible = Exact(1);
  try_key("visible", known.visible.has_value(), w);
  w = known;
  w.flat = Exact(3);
  try_key("flat", known.flat.has_value(), w);
  w = known;
  w.finished = Exact(1);
  try_key("finished", known.finished.has_value(), w);
  w = known;
  w.fullness = Exact(3);
  try_key("fullness", known.fullness.has_value(), w);
  PleatFault fault{"pleats-too-few", "", ""};
  if (!one.empty()) {
    fault.sentence = "Run " + say.run + " needs one more of " + in_order(one, " or ") + ".";
    const bool number = one.front() == "count" || one.front() == "fullness";
    fault.hint = one.front() == "count" ? "`count: 12`, say; the rest follows"
                 : number               ? "`fullness: 3`, say; the rest follows"
                                        : "write `" + one.front() + ":` and its length; the rest follows";
  } else {
    fault.sentence =
        "Run " + say.run + " needs two or three " + (open.size() < 6 ? "more " : "") + "of " + in_order(open, " and ") + ".";
    fault.hint = input.finished ? "the number of pleats and how deep each is settle it: `count: 12, depth: " +
                                      say.len(say.in == ShownIn::inches ? Exact(Length::inches(1)) : Exact(Length::cm(3))) + "`"
                                : "most runs are written by `finished`, `count` and `depth`";
  }
  return fault;
}

PleatFault not_whole(const Known& k, const Settled& s, std::int64_t folds, std::int64_t step, const Speaker& say) {
  const Exact take_up = s.flat - s.finished;
  const Exact n = take_up / (Exact(folds) * *k.depth);
  const std::int64_t fewer = n.floor() < step ? step : n.floor() / step * step, more = fewer + step;
  const auto deep = [&](std::int64_t count) { return say.len(take_up / (Exact(folds) * Exact(count))); };
  return {"pleats-contradict",
          say.len(take_up) + " taken up by pleats " + say.len(*k.depth) + " deep come to " + decimal(n.value(), 2) +
              " pleats; a count must be whole.",
          "drop `depth` and write `count: " + whole_number(fewer) + "` (then " + deep(fewer) +
              " deep) or `count: " + whole_number(more) + "` (" + deep(more) + " deep)",
          "depth"};
}

}  // namespace

bool is_folded(PleatKind kind) { return kind != PleatKind::cartridge && kind != PleatKind::gathers && kind != PleatKind::plain; }

std::int64_t folds_under(PleatKind kind) {
  if (kind == PleatKind::knife || kind == PleatKind::tucks) return 2;
  return kind == PleatKind::double_box ? 8 : 4;
}

std::variant<PleatSolution, PleatFault> solve_pleats(const PleatInput& input, std::string_view run_name, ShownIn shown_in) {
  const Speaker say{std::string(run_name), shown_in};
  const std::int64_t folds = folds_under(input.kind);
  const Exact half_step = Exact(pleat_step(shown_in)) / Exact(2);
  Known k;
  if (input.flat) k.flat = Exact(*input.flat - input.plus);
  if (input.finished) k.finished = Exact(*input.finished);
  if (input.depth) k.depth = Exact(*input.depth);
  if (input.visible) k.visible = Exact(*input.visible);
  if (input.fullness) k.fullness = Exact::of(*input.fullness);
  k.count = input.count;

  if (k.flat && *k.flat <= Exact(0))
    return PleatFault{"pleats-contradict",
                      "Run " + say.run + " is " + say.len(Exact(*input.flat)) + " flat, and `plus` alone is " +
                          say.len(Exact(input.plus)) + ".",
                      "`plus` is the flat cloth outside the pleats; it must leave some to pleat", "plus"};
  if (k.flat && k.finished && *k.flat <= *k.finished)
    return PleatFault{"no-take-up",
                      "Run " + say.run + " finishes at " + say.len(*k.finished) + " but is only " + say.len(*k.flat) + " flat.",
                      "a pleated edge is shorter than its cloth: are `flat` and `finished` swapped?", "finished"};
  if (k.fullness && *k.fullness <= Exact(1))
    return PleatFault{"no-take-up", "Run " + say.run + " has fullness " + text_of(*input.fullness) + ": nothing is left to fold.",
                      "fullness is flat over finished: 3 when the pleats just touch", "fullness"};

  std::optional<Settled> settled = settle(k, folds, false);
  if (!settled) settled = settle(k, folds, true);
  if (!settled) return too_few(input, k, folds, say);
  const Settled& s = *settled;
  const Exact n = s.count;
  if (s.count > kMostPleats)
    return PleatFault{
        "pleats-too-many",
        "Run " + say.run + " comes to " + whole_number(s.count) + " pleats; " + whole_number(kMostPleats) + " is the most.",
        "is `visible` or `depth` in the unit you meant?", k.visible ? "visible" : "depth"};
  if (s.finished <= Exact(0))
    return PleatFault{"pleats-contradict",
                      say.pleats(s.count) + " " + say.len(*k.depth) + " deep take up " + say.len(Exact(folds) * n * *k.depth) +
                          "; only " + say.len(s.flat) + " lie flat.",
                      "`depth` under " + say.len(s.flat / (Exact(folds) * n)) + ", or fewer pleats", "depth"};
  if (s.flat <= s.finished)
    return PleatFault{"no-take-up",
                      "Run " + say.run + " finishes at " + say.len(s.finished) + " but is only " + say.len(s.flat) + " flat.",
                      "a pleated edge is shorter than its cloth: fewer pleats, or less `visible`", "visible"};

  const Exact depth = (s.flat - s.finished) / (Exact(folds) * n), visible = s.finished / n;
  if (k.depth && (*k.depth - depth).abs() > half_step) {
    if (s.by == CountBy::take_up) return not_whole(k, s, folds, input.count_step, say);
    return PleatFault{"pleats-contradict",
                      say.pleats(s.count) + " " + say.len(*k.depth) + " deep take up " + say.len(Exact(folds) * n * *k.depth) +
                          "; between " + say.len(s.flat) + " flat and " + say.len(s.finished) + " finished there are " +
                          say.len(s.flat - s.finished) + ".",
                      "drop `depth`: it comes to " + say.len(depth) + "; or drop `" +
                          (k.count     ? "count"
                           : k.visible ? "visible"
                                       : "flat") +
                          "`",
                      "depth"};
  }
  if (k.visible && (*k.visible - visible).abs() > half_step) {
    const bool granted = !k.count && (s.by == CountBy::wish || (s.finished / *k.visible).nearest_tie_down() == s.count);
    if (!granted)
      return PleatFault{"pleats-contradict",
                        say.pleats(s.count) + " showing " + say.len(*k.visible) + " make " + say.len(n * *k.visible) +
                            "; finished " + (k.finished ? "says " : "comes to ") + say.len(s.finished) + ".",
                        k.count ? "drop `visible` or `count`" : "drop `visible` or `depth`", "visible"};
  }
  if (k.fullness && s.by != CountBy::fullness && (*k.fullness * s.finished - s.flat).abs() > half_step &&
      (*k.fullness - s.flat / s.finished).abs() > Exact::make(1, 200))
    return PleatFault{"pleats-contradict",
                      "Fullness " + text_of(*input.fullness) + " makes " + say.len(*k.fullness * s.finished) + " of " +
                          say.len(s.finished) + "; the rest of the run makes " + say.len(s.flat) + ".",
                      "drop `fullness`: it comes to " + decimal((s.flat / s.finished).value(), 2), "fullness"};

  PleatSolution out;
  out.count = s.count;
  out.plus = input.plus;
  out.flat = input.flat ? *input.flat : s.flat.to_length() + input.plus;
  out.finished = input.finished ? *input.finished : s.finished.to_length();
  out.depth = depth.to_length();
  out.visible = visible.to_length();
  out.overlaps = input.kind == PleatKind::knife || input.kind == PleatKind::tucks ? depth > visible : Exact(2) * depth > visible;
  out.count_rounded = s.rounded && (s.by == CountBy::wish || s.by == CountBy::fullness);
  return out;
}

std::vector<PleatMark> pleat_marks(PleatKind kind, const PleatSolution& s, const std::vector<Length>& takes) {
  std::vector<PleatMark> marks;
  const std::int64_t n = s.count, sharing = n - static_cast<std::int64_t>(takes.size());
  Length rest = s.flat - s.plus - s.finished;
  for (const Length t : takes) rest -= t;
  // All distances times `by`, so that each is divided once: a quarter of a pleat's take-up is the smallest part.
  const std::int64_t by = takes.empty() || sharing < 1 ? 4 * n : 4 * n * sharing;
  const Length seen = s.finished * (by / n);
  const auto mark = [&](std::int64_t pleat, Length fold, Length lay_on, Length edge) {
    marks.push_back({static_cast<int>(pleat), s.plus + fold.times(1, by), s.plus + lay_on.times(1, by), edge.times(1, by)});
  };
  Length start;
  for (std::int64_t k = 1; k <= n; ++k) {
    const bool said = k <= static_cast<std::int64_t>(takes.size());
    const Length under = said ? takes[static_cast<std::size_t>(k - 1)] * by : rest * (by / sharing);
    const Length end = start + seen + under, edge_start = seen * (k - 1), edge_end = seen * k;
    switch (kind) {
      case PleatKind::knife:
      case PleatKind::tucks: mark(k, start + seen, end, edge_end); break;
      case PleatKind::box:
        mark(k, start + under.times(1, 2), start, edge_start);
        mark(k, start + under.times(1, 2) + seen, end, edge_end);
        break;
      case PleatKind::double_box: {
        // Two folds brought outward on each side, the outer first: each takes a quarter of what the pleat takes.
        const Length each = under.times(1, 4);
        mark(k, start + each, start, edge_start);
        mark(k, start + each * 2, start + each, edge_start);
        mark(k, end - each * 2, end - each, edge_end);
        mark(k, end - each, end, edge_end);
        break;
      }
      case PleatKind::inverted:
      case PleatKind::inverted_at_seams: {
        const Length half = seen.times(1, 2), middle = start + half + under.times(1, 2);
        mark(k, start + half, middle, edge_start + half);
        mark(k, end - half, middle, edge_start + half);
        break;
      }
      default: return {};
    }
    start = end;
  }
  return marks;
}

}  // namespace gownsheaf
