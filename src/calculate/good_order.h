// Which of all orders that keep every wait a person would choose. Bare numbers, no step texts, so that its laws can be tried
// on random work.
//
// The objective is a sum of points; the least is best (rates are common practice, no source):
//   * 180 where one step needs another set-up than the one before it: the table cleared for cutting, the machine threaded,
//     the iron hot, needlework in the lap, the wearer dressed. On the same set-up 30 where the item changes (another
//     cloth on the table) and 15 where the act changes. Two steps of one sitting, one right after the other, save 240.
//   * for each fitting, one for each minute of work that is done before it: what a fitting needs comes first, the rest later.
//   * 900 for each pair of cuts from good cloth of which the larger comes later (the library's order: breadths, pieces,
//     drapery, strips on the bias).
// Exact for up to 12 steps (least cost over all sets of steps done, and the step done last); beyond that the best of three
// starts, each bettered by moving stretches of up to 8 steps to where they cost least, until no move helps. Effort is
// counted in places tried. Of orders that cost the same the one nearest to the library's is kept. Same input, same order.
#pragma once
#include <cstddef>
#include <cstdint>
#include <vector>

namespace gownsheaf {

enum class SetUp { table, machine, iron, hand, figure };

struct SewStep {
  SetUp set_up = SetUp::hand;
  int act = -1;      // which act of the library: steps with the same number are like work
  int item = -1;     // which cloth, run, piece, closure; -1: none
  int sitting = -1;  // steps with the same number are done in one sitting; -1: by itself
  bool fitting = false;
  int cut = -1;  // cuts good cloth: its place among all cuts, the largest first; -1: cuts none
  std::int64_t minutes = 0;
  std::vector<std::size_t> after;  // steps that must come first
};

constexpr std::size_t kExactSteps = 12;
constexpr std::int64_t kOrderEffort = 100000;  // places tried

// Points of an order of all steps.
std::int64_t points_of(const std::vector<SewStep>& steps, const std::vector<std::size_t>& order);
// `start`: an order that keeps every wait, and the one to stay near.
std::vector<std::size_t> good_order(const std::vector<SewStep>& steps, const std::vector<std::size_t>& start,
                                    std::int64_t effort = kOrderEffort);
// The two ways apart, for the tests: the exact one throws std::length_error past kExactSteps.
std::vector<std::size_t> exact_order(const std::vector<SewStep>& steps, const std::vector<std::size_t>& start);
std::vector<std::size_t> searched_order(const std::vector<SewStep>& steps, const std::vector<std::size_t>& start,
                                        std::int64_t effort = kOrderEffort);

}  // namespace gownsheaf
