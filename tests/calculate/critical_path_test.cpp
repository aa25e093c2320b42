// The critical path against published networks (check values O01 to O04 with the sources named there): earliest and latest times, slack, path.
#include "calculate/critical_path.h"

#include <string>

#include "support/catch.h"

using namespace gownsheaf;

namespace {

struct Row {
  std::int64_t takes;
  std::string after;
};

std::vector<Activity> network(const std::vector<Row>& rows) {  // activities A, B, C …
  std::vector<Activity> all;
  for (const Row& row : rows) {
    Activity a{row.takes, {}};
    for (const char c : row.after) a.after.push_back(static_cast<std::size_t>(c - 'A'));
    all.push_back(a);
  }
  return all;
}

std::string letters(const CriticalPath& p) {
  std::string path;
  for (const std::size_t i : p.path) path += static_cast<char>('A' + static_cast<int>(i));
  return path;
}

void check_times(const CriticalPath& p, char activity, std::int64_t es, std::int64_t ef, std::int64_t ls, std::int64_t lf) {
  INFO(activity);
  const ActivityTimes& t = p.times[static_cast<std::size_t>(activity - 'A')];
  CHECK(t.earliest_start == es);
  CHECK(t.earliest_finish == ef);
  CHECK(t.latest_start == ls);
  CHECK(t.latest_finish == lf);
}

std::string slacks(const CriticalPath& p) {  // of those that have any
  std::string all;
  for (std::size_t i = 0; i < p.times.size(); ++i)
    if (p.times[i].slack() != 0) all += static_cast<char>('A' + static_cast<int>(i)) + std::to_string(p.times[i].slack()) + " ";
  return all;
}

}  // namespace

TEST_CASE("critical path: four published networks", "[critical]") {
  // O01: studylib.net/doc/8378728.
  const std::vector<Activity> o01{{6, {}}, {2, {0}}, {2, {0}}, {3, {1}}, {4, {3, 5}}, {2, {2}}, {1, {4}}};  // A B C D E F G
  const CriticalPath first = critical_path(o01);
  CHECK(first.length == 16);
  CHECK(letters(first) == "ABDEG");
  check_times(first, 'C', 6, 8, 7, 9);
  check_times(first, 'F', 8, 10, 9, 11);
  CHECK(slacks(first) == "C1 F1 ");
  // O02: Heizer and Render, "Milwaukee Paper"; slacks recomputed.
  const CriticalPath second =
      critical_path(network({{2, ""}, {3, ""}, {2, "A"}, {4, "AB"}, {4, "C"}, {3, "C"}, {5, "DE"}, {2, "FG"}}));
  CHECK(second.length == 15);
  CHECK(letters(second) == "ACEGH");
  CHECK(slacks(second) == "B1 D1 F6 ");
  // O03: slideplayer.com/slide/3283910.
  const CriticalPath third =
      critical_path(network({{4, ""}, {3, "A"}, {5, "A"}, {2, "A"}, {5, "BC"}, {6, "CD"}, {4, "EF"}, {3, "G"}}));
  CHECK(third.length == 22);
  CHECK(letters(third) == "ACFGH");
  check_times(third, 'B', 4, 7, 7, 10);
  check_times(third, 'D', 4, 6, 7, 9);
  check_times(third, 'E', 9, 14, 10, 15);
  // O04: Anderson, Sweeney and Williams, shopping centre; the network from memory.
  const CriticalPath fourth =
      critical_path(network({{5, ""}, {6, "A"}, {4, "A"}, {3, "A"}, {1, "A"}, {4, "E"}, {14, "DF"}, {12, "BC"}, {2, "GH"}}));
  CHECK(fourth.length == 26);
  CHECK(letters(fourth) == "AEFGI");
  CHECK(slacks(fourth) == "B1 C3 D2 H1 ");
}
