#include "calculate/stays.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {
namespace {

bool tailored(const Project& project) {
  return project.garment.known() &&
         (*project.garment == Garment::waistcoat || *project.garment == Garment::coat || *project.garment == Garment::spencer);
}

bool is_taped(const Project& project, const EdgeLine& edge) {
  return edge.length.known() &&
         (edge.kind == "neck" || edge.kind == "armhole" || (edge.kind == "front closing" && tailored(project)));
}

class Stays {
 public:
  Stays(const Project& project, Figures& figures, Diagnostics& diag)
      : project_(project), figures_(figures), diag_(diag), in_(shown_in(project)) {}

  // False where nothing stays the waist with it.
  bool ribbon(const Notion& notion) {
    for (const Strain& strain : project_.strain) {
      if (!strain.stay || !same_name(strain.stay->with, notion.named.name)) continue;
      const Round* round = project_.waist_round();
      const bool of_round = round != nullptr && round->finished.known();
      if (!of_round && !strain.girth.known()) return true;
      const Length waist = of_round ? *round->finished : *strain.girth;
      NewFigure f(figures_, in_, "notions", notion.named.name, "stay needed");
      if (of_round) f.from("rounds/" + round->named.name + "/finished");
      else f.from(strain.goes_round.empty() ? "closures/" + strain.closure + "/girth" : "measures/" + strain.goes_round);
      f.is(stay_ribbon(waist))
          .at(notion.named.at)
          .label('c')
          .working("waist stay", "waist + 2 in at each end", worked(waist, in_) + " + 2 × " + worked(Length::inches(2), in_))
          .add();
      judge(notion, {stay_ribbon(waist)}, !of_round);
      return true;
    }
    return false;
  }

  void tape(const Notion& notion) {
    std::vector<Length> pieces;
    Length sum;
    std::string numbers;
    NewFigure f(figures_, in_, "notions", notion.named.name, "stay needed");
    for (const EdgeLine& edge : project_.edges) {
      if (!is_taped(project_, edge)) continue;
      const Length one = stay_tape(*edge.length);
      pieces.insert(pieces.end(), static_cast<std::size_t>(edge.number), one);
      sum += one * edge.number;
      f.plain_input("edges/" + edge.named.name + "/length");
      numbers += (numbers.empty() ? "" : " + ") + whole_number(edge.number) + " × (" + worked(*edge.length, in_) + " + " +
                 worked(Length::inches(2), in_) + ")";
    }
    if (pieces.empty()) return;
    f.is(sum).at(notion.named.at).label('c').working("stay tape", "number × (edge + 1 in at each end)", numbers).add();
    judge(notion, std::move(pieces), false);
  }

 private:
  // The longest from the longest length that is left.
  void judge(const Notion& notion, std::vector<Length> pieces, bool of_the_body) {
    if (!notion.bought_lengths.known()) return;
    std::vector<Length> shelf = *notion.bought_lengths;
    std::sort(pieces.rbegin(), pieces.rend());
    for (const Length piece : pieces) {
      std::sort(shelf.rbegin(), shelf.rend());
      if (!shelf.empty() && shelf.front() >= piece) {
        shelf.front() -= piece;
        continue;
      }
      const Length left = shelf.empty() ? Length{} : shelf.front();
      diag_.add(message(
          {notion.named.name, "notions", "to buy", of_the_body}, Severity::hold, "stay-short", notion.bought_lengths.at,
          capital(notion.named.name) + ": " + text_of(piece, in_, cut_step(in_), Rounding::up).plain() +
              " is needed in one piece; the longest left is " + text_of(left, in_, cut_step(in_), Rounding::down).plain() + ".",
          "buy " + text_of(piece, in_, cut_step(in_), Rounding::up).plain() + " more"));
      return;
    }
  }

  const Project& project_;
  Figures& figures_;
  Diagnostics& diag_;
  ShownIn in_;
};

}  // namespace

Length stay_ribbon(Length waist) { return waist + Length::inches(4); }
Length stay_tape(Length edge) { return edge + Length::inches(2); }

void add_stays(const Project& project, Figures& figures, Diagnostics& diag) {
  Stays stays(project, figures, diag);
  for (const Notion& notion : project.notions)
    if (!stays.ribbon(notion) && notion.kind == "tape" && notion.named.name.find("stay") != std::string::npos) stays.tape(notion);
}

}  // namespace gownsheaf
