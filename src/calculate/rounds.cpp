#include "calculate/rounds.h"

#include <algorithm>

#include "calculate/exact.h"
#include "calculate/new_figure.h"
#include "calculate/yardage.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

Length said(const Given<Length>& given, Length usual) {
  if (given.known()) return *given;
  return given.origin == Origin::none ? Length{} : usual;
}

// "measure `finished` and write it", where something about the run is still to be measured; else "".
std::string still_to_measure(const PleatRun& run) {
  const std::pair<const char*, Origin> keys[] = {
      {"flat", run.flat.origin},       {"finished", run.finished.origin}, {"depth", run.depth.origin},
      {"visible", run.visible.origin}, {"count", run.count.origin},       {"fullness", run.fullness.origin},
  };
  std::string words;
  for (const auto& [key, origin] : keys)
    if (origin == Origin::to_measure) words += (words.empty() ? "measure `" : " and `") + std::string(key) + "`";
  return words.empty() ? "" : words + ", then write it here";
}

template <class T>
std::optional<T> value_of(const Given<T>& given) {
  return given.value;
}

Toward toward_of(const PleatRun& run) { return run.toward.known() ? *run.toward : Toward::centre_back; }

// Knife pleats of a whole run that meet in the middle: as many on each side.
bool turns_from_both_sides(const PleatRun& run) {
  const Toward toward = toward_of(run);
  return folds_under(run.kind) == 2 && !run.half && toward != Toward::left && toward != Toward::right;
}

// Where a run writes a key, or its name.
SourceSpan place_of(const PleatRun& run, const std::string& key) {
  const std::pair<const char*, const SourceSpan*> places[] = {
      {"flat", &run.flat.at},
      {"finished", &run.finished.at},
      {"depth", &run.depth.at},
      {"visible", &run.visible.at},
      {"count", &run.count.at},
      {"fullness", &run.fullness.at},
      {"plus", &run.plus.at},
      {"tiers", run.tiers.empty() ? &run.named.at : &run.tiers.front().named.at},
      {"stitched down", &run.stitched_down.at},
      {"takes", &run.takes.at},
      {"first takes", &run.first_takes.at},
      {"finished at", &run.finished_at.hip.at},
      {"finished at", &run.finished_at.hem.at},
      {"finished at", &run.finished_at.waist.at},
      {"flat at", &run.flat_at.hip.at},
      {"flat at", &run.flat_at.hem.at},
      {"flat at", &run.flat_at.waist.at},
  };
  for (const auto& [name, at] : places)
    if (key == name && at->line > 0) return *at;
  return run.named.at;
}

}  // namespace

Allowed allowed_on(const Piece& piece) {
  Allowed a;
  const auto written = [](const Given<Length>& given) { return given.known() && given.origin == Origin::written; };
  const bool hangs = piece.part_of.known() && (*piece.part_of == PartOf::skirt || *piece.part_of == PartOf::petticoat);
  a.skirt_ends = hangs || written(piece.hem) || written(piece.top);  // a cloak or a ruffle has a hem where one is written
  a.seam = said(piece.seam_allowance, Length::sixty_fourths(32));
  a.hem = said(piece.hem, hangs ? Length::inches(3) : Length{});
  a.top = said(piece.top, a.seam);
  return a;
}

bool is_full_width(const Piece& piece) {
  if (piece.width.kind == Size::Kind::full_width) return true;
  if (piece.width.kind != Size::Kind::unknown || !piece.make.known()) return false;
  return piece.make->kind == Make::Kind::joined_round || piece.make->kind == Make::Kind::fills;
}

std::optional<Length> shrunk_width(const Cloth& cloth) {
  if (!cloth.width.known()) return std::nullopt;
  const bool shrunk = cloth.shrunk_already.known() && *cloth.shrunk_already;
  if (shrunk || !cloth.shrinks_across.known()) return *cloth.width;
  const Ratio s = cloth.shrinks_across->of_one;
  return cloth.width->times(s.d - s.n, s.d, Rounding::down);
}

std::optional<Length> shrunk_usable_width(const Cloth& cloth) {
  const auto width = shrunk_width(cloth);
  if (!width) return std::nullopt;
  return *width - 2 * said(cloth.selvage, Length::sixty_fourths(32));
}

std::optional<Length> joined_width(const Piece& piece, const Cloth& cloth) {
  const Allowed a = allowed_on(piece);
  if (is_full_width(piece)) {
    const auto width = shrunk_width(cloth);
    if (!width) return std::nullopt;
    return joined_round(1, *width, a.seam, said(cloth.selvage, Length::sixty_fourths(32)));
  }
  if (piece.width.kind == Size::Kind::finished) return piece.width.value;
  if (piece.width.kind == Size::Kind::cut) return piece.width.value - 2 * a.seam;
  return std::nullopt;
}

std::optional<Length> RunSum::in_round(const std::optional<Length>& l) const {
  if (!l) return std::nullopt;
  return run->half ? 2 * *l : *l;
}

RoundSums::RoundSums(const Project& project, Diagnostics& diag) : project_(project), diag_(diag) {
  runs_.resize(project.pleats.size());
  state_.assign(project.pleats.size(), 0);
  for (std::size_t i = 0; i < runs_.size(); ++i) runs_[i].run = &project.pleats[i];
  for (std::size_t i = 0; i < runs_.size(); ++i) settle(i);
  for (RunSum& s : runs_) {
    bool known = true;
    const Length before = used_before(*s.run, known);
    s.begins_at = s.run->begins_at.known() ? *s.run->begins_at : known ? before : Length{};
  }
}

const Round* RoundSums::round_of(const PleatRun& run) const {
  for (const Round& round : project_.rounds)
    for (const std::string& name : round.runs)
      if (same_name(name, run.named.name)) return &round;
  return nullptr;
}

std::optional<std::int64_t> RoundSums::number_of(const Piece& piece, const Cloth& cloth) {
  const Make make = piece.make.known() ? *piece.make : Make{};
  if (make.kind == Make::Kind::number) return make.number;
  if (make.kind == Make::Kind::pairs) return 2 * make.number;
  const auto one = joined_width(piece, cloth);
  if (!one || *one <= Length{}) return std::nullopt;
  if (make.kind == Make::Kind::joined_round) return std::max<std::int64_t>(1, count_of(make.joined_round, *one, Rounding::up));
  if (!filling_.insert(piece.named.name).second) return std::nullopt;  // it fills a run that waits for it
  const std::optional<Length> wanted = filled(make.fills);
  filling_.erase(piece.named.name);
  if (!wanted) return std::nullopt;
  return std::max<std::int64_t>(1, count_of(*wanted, *one, Rounding::up));
}

std::optional<Length> RoundSums::filled(const std::string& run_or_round) {
  for (std::size_t i = 0; i < runs_.size(); ++i)
    if (same_name(project_.pleats[i].named.name, run_or_round)) {
      const RunSum& s = settle(i);
      return s.in_round(s.flat);
    }
  const Round* round = project_.round(run_or_round);
  if (round == nullptr) return std::nullopt;
  Length runs;  // what its runs take, when each is settled without the pieces that are asked for
  bool all = !round->runs.empty();
  for (const std::string& name : round->runs)
    for (std::size_t i = 0; all && i < runs_.size(); ++i) {
      if (!same_name(project_.pleats[i].named.name, name)) continue;
      const RunSum& s = settle(i);
      const std::optional<Length> flat = s.in_round(s.flat);
      all = flat.has_value();
      if (flat) runs += *flat;
    }
  return all ? std::optional<Length>(runs) : joined(round->of).length;
}

Joined RoundSums::joined(const std::vector<std::string>& pieces) {
  Joined out;
  out.unsaid = project_.failed_sections.count("pieces") != 0 || project_.failed_sections.count("cloths") != 0;
  Length sum;
  for (const std::string& name : pieces) {
    const Piece* piece = project_.piece(name);
    const Cloth* cloth = piece != nullptr && !piece->from.empty() ? project_.cloth(piece->from.front()) : nullptr;
    if (cloth == nullptr) return out;
    const auto one = joined_width(*piece, *cloth);
    if (!one) {
      out.unsaid = out.unsaid || !cloth->width.known();
      return out;
    }
    const auto n = number_of(*piece, *cloth);
    if (!n) return out;
    sum += *n * *one;
  }
  if (!pieces.empty()) out.length = sum;
  return out;
}

Length RoundSums::used_before(const PleatRun& run, bool& known) {
  Length used;
  const Round* round = round_of(run);
  if (round == nullptr) return used;
  for (const std::string& name : round->runs) {
    if (same_name(name, run.named.name)) break;
    for (std::size_t i = 0; i < runs_.size(); ++i)
      if (same_name(project_.pleats[i].named.name, name)) {
        const RunSum& s = settle(i);
        if (!s.flat) known = false;
        else used += s.run->half ? *s.flat : s.flat->times(1, 2);
      }
  }
  return used;
}

Joined RoundSums::flat_from_round(const PleatRun& run) {
  const Round* round = round_of(run);
  const std::vector<std::string>& of = run.of.empty() && round != nullptr ? round->of : run.of;
  Joined all = joined(of);
  if (!all.length) return all;
  Length half_used;
  if (run.flat_is_the_rest) {
    bool known = true;
    half_used = used_before(run, known);
    if (!known) return {std::nullopt, true};
  }
  all.length = run.half ? all.length->times(1, 2) - half_used : *all.length - 2 * half_used;
  return all;
}

const RunSum& RoundSums::settle(std::size_t index) {
  RunSum& s = runs_[index];
  if (state_[index] != 0) return s;
  state_[index] = 1;
  if (const auto wrong = uneven_contradiction(*s.run, shown_in(project_))) {
    fault(*s.run, *wrong);
    state_[index] = 2;
    return s;
  }
  switch (s.run->kind) {
    case PleatKind::plain: settle_plain(s); break;
    case PleatKind::gathers:
    case PleatKind::cartridge: settle_gathers(s); break;
    default: settle_pleats(s); break;
  }
  state_[index] = 2;
  return s;
}

void RoundSums::fault(const PleatRun& run, const PleatFault& fault) {
  const bool waits = fault.code == "pleats-too-few" && !still_to_measure(run).empty();
  diag_.add(message({run.named.name, "pleats", "pleats"}, waits ? Severity::hold : Severity::error, fault.code,
                    place_of(run, fault.key), fault.sentence, waits ? still_to_measure(run) : fault.hint));
}

void RoundSums::settle_plain(RunSum& s) {
  const PleatRun& run = *s.run;
  if (run.flat.known() && run.finished.known() && *run.flat != *run.finished) {
    const ShownIn in = shown_in(project_);
    fault(run, {"pleats-contradict",
                "Plain run " + run.named.name + " is " + worked(*run.flat, in) + " flat and " + worked(*run.finished, in) +
                    " finished; a plain run is as long as its cloth.",
                "drop one, or let `kind` say how the cloth is taken in", "finished"});
    return;
  }
  s.flat = run.flat.known() ? value_of(run.flat) : value_of(run.finished);
  if (!s.flat) {
    s.flat = flat_from_round(run).length;
    s.flat_by = run.flat_is_the_rest ? RunSum::FlatBy::rest : RunSum::FlatBy::joined;
  }
  s.finished = s.flat;
}

void RoundSums::settle_gathers(RunSum& s) {
  const PleatRun& run = *s.run;
  const Length plus = said(run.plus, Length{});
  s.flat = value_of(run.flat);
  s.finished = value_of(run.finished);
  s.fullness = value_of(run.fullness);
  if (!run.tiers.empty() && s.finished) {
    auto tiers = settle_tiers(run, *s.finished, shown_in(project_));
    if (tiers.index() == 1) return fault(run, std::get<1>(tiers));
    s.tiers = std::get<0>(tiers);
    if (!s.flat && !s.fullness) {
      s.flat = s.tiers.front().flat + plus;
      s.fullness = s.tiers.front().fullness;
      s.flat_by = RunSum::FlatBy::tiers;
    }
  }
  if (!s.flat && s.finished && s.fullness) {
    s.flat = s.finished->times(s.fullness->n, s.fullness->d) + plus;
    s.flat_by = RunSum::FlatBy::worked;
  }
  if (!s.flat) {
    const Joined all = flat_from_round(run);
    s.flat = all.length;
    s.flat_by = run.flat_is_the_rest ? RunSum::FlatBy::rest : RunSum::FlatBy::joined;
    if (!s.flat && all.unsaid) return;
  }
  if (s.flat && s.fullness && !s.finished) s.finished = (*s.flat - plus).times(s.fullness->d, s.fullness->n);
  if (!s.flat || !s.finished) {
    fault(run, {"pleats-too-few",
                (run.kind == PleatKind::cartridge ? "Cartridge run " : "Gathered run ") + run.named.name +
                    " needs two of flat, finished and fullness.",
                s.finished ? "`fullness: 2`, say" : "`finished` is the edge that it is drawn up to"});
    return;
  }
  if (*s.flat - plus <= *s.finished) {
    const ShownIn in = shown_in(project_);
    fault(run, {"no-take-up",
                "Run " + run.named.name + " finishes at " + worked(*s.finished, in) + " but is only " +
                    worked(*s.flat - plus, in) + " flat.",
                "a gathered edge is shorter than its cloth: are they swapped?", "finished"});
    s.flat.reset();
    s.finished.reset();
    return;
  }
  if (!s.fullness) s.fullness = Ratio::of((*s.flat - plus).in_ticks(), s.finished->in_ticks());
}

void RoundSums::settle_pleats(RunSum& s) {
  const PleatRun& run = *s.run;
  const ShownIn in = shown_in(project_);
  PleatInput input{run.kind,
                   value_of(run.flat),
                   value_of(run.finished),
                   value_of(run.depth),
                   value_of(run.visible),
                   value_of(run.count),
                   value_of(run.fullness),
                   said(run.plus, Length{}),
                   turns_from_both_sides(run) ? 2 : 1};
  auto outcome = solve_pleats(input, run.named.name, in);
  const bool short_of = outcome.index() == 1 && std::get<1>(outcome).code == "pleats-too-few";
  s.flat_by = run.flat.known() ? RunSum::FlatBy::written : RunSum::FlatBy::worked;
  if (!input.flat && (short_of || run.flat_is_the_rest)) {
    // Too little said without the flat width: it is what the joined pieces have.
    const Joined all = flat_from_round(run);
    if (all.length) {
      input.flat = all.length;
      s.flat_by = run.flat_is_the_rest ? RunSum::FlatBy::rest : RunSum::FlatBy::joined;
      outcome = solve_pleats(input, run.named.name, in);
    } else if (all.unsaid) {
      return;
    }
  }
  if (outcome.index() == 1) return fault(run, std::get<1>(outcome));
  s.sum = std::get<0>(outcome);
  s.half = s.sum;
  s.mirrored = run.half;
  if (!run.half && !settle_mirror(s, input)) return;
  auto uneven = settle_uneven(run, s.half, s.mirrored && !run.half, in);
  if (uneven.index() == 1) return fault(run, std::get<1>(uneven));
  s.takes = std::get<0>(uneven).takes;
  s.levels = std::get<0>(uneven).levels;
  s.pleated = true;
  s.flat = s.sum.flat;
  s.finished = s.sum.finished;
}

bool RoundSums::settle_mirror(RunSum& s, const PleatInput& input) {
  const PleatRun& run = *s.run;
  const Toward toward = toward_of(run);
  if (toward == Toward::left || toward == Toward::right) return true;
  const bool knife = folds_under(run.kind) == 2;
  if (s.sum.count % 2 != 0) {
    if (!knife) return true;  // a box or inverted pleat is its own mirror: it may lie on the middle line
    const bool wish = !input.count && (input.visible || input.fullness) && !(input.flat && input.finished && input.depth);
    if (!wish) {
      const std::int64_t n = s.sum.count;
      fault(run, {"pleats-odd",
                  "Run " + run.named.name + " has " + whole_number(n) + (n == 1 ? " pleat that turns" : " pleats that turn") +
                      " toward " + (toward == Toward::centre_back ? "centre back" : "centre front") +
                      " from both sides; two halves need an even count.",
                  (input.count ? "" : "drop `depth` and write ") +
                      std::string(n == 1 ? "" : "`count: " + whole_number(n - 1) + "` or ") + "`count: " + whole_number(n + 1) +
                      "`, or `toward: left` for all one way",
                  "count"});
      return false;
    }
    // A wish for `visible` rounds to the nearest count in each half.
    PleatInput half = input;
    for (std::optional<Length>* l : {&half.flat, &half.finished})
      if (*l) *l = (*l)->times(1, 2);
    half.plus = input.plus.times(1, 2);
    auto outcome = solve_pleats(half, run.named.name, shown_in(project_));
    if (outcome.index() == 1) {
      fault(run, std::get<1>(outcome));
      return false;
    }
    const PleatSolution h = std::get<0>(outcome);
    PleatInput even = input;
    even.visible.reset();
    if (!input.visible) even.fullness.reset();
    even.count = 2 * h.count;
    outcome = solve_pleats(even, run.named.name, shown_in(project_));
    if (outcome.index() == 1) {
      fault(run, std::get<1>(outcome));
      return false;
    }
    s.sum = std::get<0>(outcome);
    s.sum.count_rounded = true;
  }
  s.mirrored = true;
  s.half = s.sum;
  s.half.count = s.sum.count / 2;
  s.half.plus = s.sum.plus.times(1, 2);
  s.half.flat = s.half.plus + (s.sum.flat - s.sum.plus).times(1, 2);
  s.half.finished = s.sum.finished.times(1, 2);
  return true;
}

}  // namespace gownsheaf
