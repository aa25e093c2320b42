#include "calculate/closing_notions.h"

#include <algorithm>

#include "calculate/new_figure.h"
#include "diagnostics/message.h"

namespace gownsheaf {
void add_closing_notions(const Project& project, const std::vector<ClosingPlan>& plans, Figures& figures, Diagnostics& diag) {
  const ShownIn in = shown_in(project);
  for (const Notion& notion : project.notions) {
    std::int64_t number = 0;
    std::vector<Length> laces;
    std::vector<std::string> number_keys, lace_keys;
    bool ties = false;
    for (const ClosingPlan& plan : plans) {
      if (!same_name(plan.with, notion.named.name)) continue;
      const std::string of = "closures/" + plan.closure + "/";
      const auto tie = figures.length(of + "tie length");
      const auto tie_count = figures.count(of + "ties");
      if (tie && tie_count) {
        laces.insert(laces.end(), static_cast<std::size_t>(*tie_count), *tie);
        lace_keys.push_back(of + "tape length");
        ties = true;
      } else if (const auto lace = figures.length(of + "lace length"); lace && notion.kind != "eyelet") {
        laces.insert(laces.end(), static_cast<std::size_t>(plan.times), *lace);
        lace_keys.push_back(of + "lace length");
      } else if (const auto all = figures.count(of + "in all"); all && plan.fasten != "ties") {
        number += *all;
        number_keys.push_back(of + "in all");
      }
    }
    const auto hold = [&](std::string code, std::string sentence, std::string hint, const SourceSpan& at) {
      diag.add(message({notion.named.name, "notions", "to buy"}, Severity::hold, std::move(code), at, std::move(sentence),
                       std::move(hint)));
    };
    if (number > 0) {
      NewFigure f(figures, in, "notions", notion.named.name, "fasteners needed");
      f.is(number).at(notion.named.at);
      for (const std::string& key : number_keys) f.from(key);
      f.add();
      if (notion.bought_number.known() && *notion.bought_number < number)
        hold("fasteners-short",
             capital(notion.named.name) + ": " + whole_number(number) + " needed, " + whole_number(*notion.bought_number) +
                 " bought.",
             "buy " + whole_number(number - *notion.bought_number) + " more, or set them wider apart", notion.bought_number.at);
    }
    if (laces.empty()) continue;
    Length sum;
    for (const Length l : laces) sum += l;
    NewFigure f(figures, in, "notions", notion.named.name, "lace needed");
    f.is(sum).at(notion.named.at);
    for (const std::string& key : lace_keys) f.from(key);
    f.add();
    if (!notion.bought_lengths.known()) continue;
    // Longest lace from the longest length that is left.
    std::vector<Length> shelf = *notion.bought_lengths;
    std::sort(laces.rbegin(), laces.rend());
    for (const Length lace : laces) {
      std::sort(shelf.rbegin(), shelf.rend());
      if (!shelf.empty() && shelf.front() >= lace) {
        shelf.front() -= lace;
        continue;
      }
      hold("lace-short",
           capital(notion.named.name) + (ties ? ": a tie of " : ": a lace of ") +
               text_of(lace, in, cut_step(in), Rounding::up).plain() + " is needed in one piece; the longest left is " +
               text_of(shelf.empty() ? Length{} : shelf.front(), in, cut_step(in), Rounding::down).plain() + ".",
           "buy that length, or shorter `tie ends`", notion.bought_lengths.at);
      break;
    }
  }
}

}  // namespace gownsheaf
