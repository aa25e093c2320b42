// Rounds: what the joined pieces measure, and whether the runs account for all of it.
#include <algorithm>

#include "calculate/new_figure.h"
#include "calculate/pleats_figures.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

const RunSum* sum_of(const RoundSums& sums, const std::string& run) {
  for (const RunSum& s : sums.runs())
    if (same_name(s.run->named.name, run)) return &s;
  return nullptr;
}

Length length_of(const std::optional<Length>& l) { return l ? *l : Length{}; }
Length size_of(Length l) { return l < Length{} ? -l : l; }

struct RoundSum {
  Length total;
  bool known = true;
  std::string numbers;
  std::int64_t pleats = 0;
};

RoundSum add_up(const RoundSums& sums, const std::vector<std::string>& runs, ShownIn in, bool flat) {
  RoundSum sum;
  for (const std::string& name : runs) {
    const RunSum* s = sum_of(sums, name);
    const auto part = s == nullptr ? std::nullopt : s->in_round(flat ? s->flat : s->finished);
    sum.known = sum.known && part.has_value();
    if (!part) continue;
    const Length own = length_of(flat ? s->flat : s->finished);
    sum.total += *part;
    if (s->pleated) sum.pleats += s->run->half ? 2 * s->sum.count : s->sum.count;
    sum.numbers += (sum.numbers.empty() ? "" : " + ") + (s->run->half ? "2 × " + worked(own, in) : worked(own, in));
  }
  return sum;
}

// What part of the joined round each run uses.
void add_uses(const RoundSums& sums, const Round& round, Length joined, ShownIn in, Figures& figures) {
  const std::string& name = round.named.name;
  for (const std::string& run : round.runs) {
    const RunSum* s = sum_of(sums, run);
    const auto uses = s == nullptr ? std::nullopt : s->in_round(s->flat);
    if (!uses) continue;
    const std::string key = "runs/" + run + "/";
    NewFigure f(figures, in, "rounds", name, key + "uses");
    f.is(*uses).at(round.named.at).from("pleats/" + run + "/flat");
    if (s->run->half) f.working("flat cloth of " + run, "both halves", "2 × " + worked(*s->flat, in));
    f.add();
    NewFigure(figures, in, "rounds", name, key + "share")
        .is(Percent{Ratio::of(uses->in_ticks(), joined.in_ticks())})
        .at(round.named.at)
        .from("rounds/" + name + "/" + key + "uses")
        .from("rounds/" + name + "/joined round")
        .working("part of " + name + " in " + run, "uses / joined round", worked(*uses, in) + " / " + worked(joined, in))
        .add();
  }
}

void hold(Diagnostics& diag, std::string code, const Named& named, std::string section, std::string sentence, std::string hint) {
  diag.add(message({named.name, std::move(section), "pleats"}, Severity::hold, std::move(code), named.at, std::move(sentence),
                   std::move(hint)));
}

// Says when flat cloth lies in no run, or the runs want more than there is; less than half a mark cannot be seen.
void judge_flat(Diagnostics& diag, const Named& named, const std::string& section, Length joined, const RoundSum& flat,
                ShownIn in, bool several) {
  const Length over = joined - flat.total;
  if (size_of(over) <= mark_step(in).times(1, 2)) return;
  const std::string runs = several ? "The runs of " + named.name + " use " : "Run " + named.name + " uses ";
  if (over > Length{})
    hold(diag, "round-unexplained", named, section,
         runs + worked(flat.total, in) + " of " + worked(joined, in) + ": " + worked(over, in) + " lie in no run.",
         "add a run of `kind: plain`, widen one, or write `flat: the rest`");
  else
    hold(diag, "round-unexplained", named, section,
         runs + worked(flat.total, in) + ", and the joined pieces have " + worked(joined, in) + ": " + worked(-over, in) +
             " are missing.",
         "another breadth, fewer or shallower pleats, or `flat: the rest`");
}

void judge_finished(const Project& project, RoundSums& sums, const Round& round, Diagnostics& diag) {
  const ShownIn in = shown_in(project);
  const RoundSum finished = add_up(sums, round.runs, in, false);
  if (!round.finished.known() || !finished.known || round.runs.empty()) return;
  const Length over = finished.total - *round.finished;
  if (size_of(over) <= mark_step(in).times(1, 2)) return;
  std::string hint = "alter `finished` of the round or of a run";
  if (finished.pleats > 0)
    hint = worked(size_of(over), in) + " over " + whole_number(finished.pleats) + (finished.pleats == 1 ? " pleat" : " pleats") +
           ": show " + text_of(size_of(over).times(1, finished.pleats), in, pleat_step(in), Rounding::nearest).plain() +
           (over > Length{} ? " less" : " more") + " on each; or " + hint;
  hold(diag, "waist-seam-differs", round.named, "rounds",
       "The runs of " + round.named.name + " finish at " + worked(finished.total, in) +
           " together; the edge they are sewn to is " + worked(*round.finished, in) + ".",
       hint);
}

// A run that stands in no round is a round of its own, unless a piece is cut to fill it: that piece is cut to its length.
void judge_lone_run(const Project& project, RoundSums& sums, const RunSum& s, Diagnostics& diag) {
  if (sums.round_of(*s.run) != nullptr || s.run->of.empty() || s.flat_by == RunSum::FlatBy::joined || !s.flat) return;
  for (const std::string& name : s.run->of) {
    const Piece* piece = project.piece(name);
    if (piece == nullptr || !piece->make.known() || piece->make->kind == Make::Kind::fills || !is_full_width(*piece)) return;
  }
  for (const PleatRun& other : project.pleats)  // several runs on the same pieces and no round: nothing says that they share it
    if (&other != s.run && other.of == s.run->of) return;
  const Joined all = sums.joined(s.run->of);
  if (!all.length) return;
  RoundSum flat;
  flat.total = length_of(s.in_round(s.flat));
  judge_flat(diag, s.run->named, "pleats", *all.length, flat, shown_in(project), false);
}

}  // namespace

JoinedLine joined_line(const Project& project, RoundSums& sums, const std::vector<std::string>& pieces) {
  JoinedLine line;
  const ShownIn in = shown_in(project);
  for (const std::string& name : pieces) {
    const Piece* piece = project.piece(name);
    const Cloth* cloth = piece != nullptr && !piece->from.empty() ? project.cloth(piece->from.front()) : nullptr;
    if (cloth == nullptr) return {};
    const auto n = sums.number_of(*piece, *cloth);
    const auto one = joined_width(*piece, *cloth);
    if (!n || !one) return {};
    const std::string many = whole_number(*n) + " × ";
    std::string formula = "pieces × width between seam lines", numbers = many + worked(*one, in);
    if (is_full_width(*piece)) {
      const Length width = *shrunk_width(*cloth), lost = (width - *one).times(1, 2);
      formula = "widths × cloth − 2 × widths × the larger of seam and selvage";
      numbers = many + worked(width, in) + " − " + whole_number(2 * *n) + " × " + worked(lost, in);
    }
    if (line.formula.find(formula) == std::string::npos) line.formula += (line.formula.empty() ? "" : "; ") + formula;
    line.numbers += (line.numbers.empty() ? "" : " + ") + numbers;
    line.inputs.push_back("cloths/" + cloth->named.name + "/width");
    line.inputs.push_back("pieces/" + piece->named.name + "/seam allowance");
    line.inputs.push_back("pieces/" + piece->named.name + "/" + cloth->named.name + "/copies");
  }
  return line;
}

void add_rounds(const Project& project, RoundSums& sums, Figures& figures, Diagnostics& diag) {
  const ShownIn in = shown_in(project);
  for (const Round& round : project.rounds) {
    const std::string& name = round.named.name;
    const Joined joined = sums.joined(round.of);
    if (joined.length) {
      const JoinedLine line = joined_line(project, sums, round.of);
      NewFigure f(figures, in, "rounds", name, "joined round");
      f.is(*joined.length).at(round.named.at).working("the breadths joined", line.formula, line.numbers);
      for (const std::string& input : line.inputs) f.from(input);
      f.add();
    }
    if (round.finished.known())
      NewFigure(figures, in, "rounds", name, "finished").is(*round.finished).at(round.finished.at).from("", round.finished).add();
    if (joined.length && *joined.length > Length{}) add_uses(sums, round, *joined.length, in, figures);
    const RoundSum flat = add_up(sums, round.runs, in, true);
    if (!flat.known || round.runs.empty()) continue;
    NewFigure explained(figures, in, "rounds", name, "explained");
    explained.is(flat.total)
        .at(round.named.at)
        .working("flat cloth that the runs use", "sum of the runs, both halves", flat.numbers);
    for (const std::string& run : round.runs) explained.from("rounds/" + name + "/runs/" + run + "/uses");
    explained.add();
    if (joined.length && size_of(*joined.length - flat.total) > mark_step(in).times(1, 2))
      NewFigure(figures, in, "rounds", name, "unexplained")
          .is(*joined.length - flat.total)
          .at(round.named.at)
          .from("rounds/" + name + "/joined round")
          .from("rounds/" + name + "/explained")
          .working("flat cloth in no run", "joined round − explained",
                   worked(*joined.length, in) + " − " + worked(flat.total, in))
          .add();
    if (joined.length) judge_flat(diag, round.named, "rounds", *joined.length, flat, in, true);
    judge_finished(project, sums, round, diag);
  }
  for (const RunSum& s : sums.runs()) judge_lone_run(project, sums, s, diag);
}

}  // namespace gownsheaf
