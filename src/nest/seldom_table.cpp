#include "nest/seldom_table.h"

namespace gownsheaf::nest {

SeldomTable::SeldomTable(const Shape& a, const Shape& b) : a_(a), b_(b), grid_(a, b, 0, kCells), least_(least_offset(a, b, 0)) {}

Meeting SeldomTable::meeting(int cell) const {
  std::atomic<std::uint32_t>& kept = cells_[cell];
  Meeting now{kept.load(std::memory_order_relaxed)};
  if (now.kind() != Meeting::unknown) return now;
  const double i = (cell & (grid_.cells() - 1)) + 0.5, j = (cell >> grid_.shift) + 0.5;
  const int x = least_.x + static_cast<int>(i * grid_.cell_width()), y = least_.y + static_cast<int>(j * grid_.cell_height());
  now = meeting_around(a_, b_, x, y, static_cast<int>(grid_.cell_width() / 2) + 2, static_cast<int>(grid_.cell_height() / 2) + 2);
  kept.store(now.word, std::memory_order_relaxed);
  return now;
}

float SeldomTable::node(int at) const {
  std::atomic<float>& kept = nodes_[at];
  float loss = kept.load(std::memory_order_relaxed);
  if (loss > 0) return loss;
  const int row = grid_.cells() + 1;
  loss = LossAtNodes(a_, a_.rows, b_, b_.rows, grid_, least_)(at % row, at / row);
  kept.store(loss, std::memory_order_relaxed);
  return loss;
}

double SeldomTable::loss(int u, int v) const {
  if (grid_.outside(u, v)) return 0;
  const Grid::Spot s = grid_.spot(u, v);
  if (!overlap_at(a_, b_, u + least_.x, v + least_.y, meeting(s.cell))) return 0;
  const int above = s.node + grid_.cells() + 1;
  return Grid::between(s, node(s.node), node(s.node + 1), node(above), node(above + 1));
}

}  // namespace gownsheaf::nest
