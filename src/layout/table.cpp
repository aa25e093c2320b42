// Tables: rules only, numbers of one column under each other, heads and group rows repeated over a page end.
#include <algorithm>

#include "layout/table_columns.h"

namespace gownsheaf {

namespace {

class TableSetter {
 public:
  TableSetter(const Table& table, const Bench& bench)
      : table_(table), bench_(bench), scale_(bench.scale()), places_(place_columns(table, bench)) {}

  Slabs slabs() {
    Slabs slabs;
    if (table_.rows.empty() || table_.columns.empty()) return slabs;
    const Slab head = head_slab();
    slabs.push_back(head);
    const auto head_only = std::make_shared<const Slabs>(1, head);
    std::shared_ptr<const Slabs> with_group = head_only;
    std::size_t marks_seen = 0;
    for (std::size_t i = 0; i < table_.rows.size(); ++i) {
      const Row& row = table_.rows[i];
      if (row.kind == Row::Kind::plain) ++marks_seen;
      const bool heavy = table_.heavy_every_third && row.kind == Row::Kind::plain && marks_seen % 3 == 0;
      Slab slab = row.kind == Row::Kind::group ? group_slab(row, false) : row_slab(row, heavy);
      slab.keep = keep_of(i);
      slab.changed = std::any_of(row.cells.begin(), row.cells.end(), [](const Cell& cell) { return any_changed(cell.text); });
      if (row.kind == Row::Kind::group) with_group = std::make_shared<const Slabs>(Slabs{head, group_slab(row, true)});
      slab.again = row.kind == Row::Kind::group || group_over(i) ? head_only : with_group;
      slabs.push_back(std::move(slab));
    }
    return slabs;
  }

 private:
  bool is(std::size_t i, Row::Kind kind) const { return table_.rows[i].kind == kind; }
  // A total at the very end sums the whole table, not its last group.
  bool group_over(std::size_t i) const { return is(i, Row::Kind::total) && i + 1 == table_.rows.size(); }

  // No row alone on either side of a page end: the first two of the table or of a group stay together, and the last
  // two; a total keeps the two rows before it.
  Slab::Keep keep_of(std::size_t i) const {
    const std::size_t last = table_.rows.size() - 1;
    if (i == last) return Slab::Keep::no;
    if (is(i, Row::Kind::group)) return Slab::Keep::hard;
    const bool first_of_some = i == 0 || is(i - 1, Row::Kind::group);
    const bool next_goes_on = !is(i + 1, Row::Kind::group);
    if (first_of_some && next_goes_on) return Slab::Keep::hard;
    if (i + 1 == last && next_goes_on) return Slab::Keep::hard;
    if (next_goes_on && (i + 2 > last || is(i + 2, Row::Kind::group))) return Slab::Keep::hard;
    if (is(i + 1, Row::Kind::total)) return Slab::Keep::hard;
    if (i + 2 <= last && is(i + 2, Row::Kind::total) && next_goes_on) return Slab::Keep::hard;
    return Slab::Keep::no;
  }

  Length row_height() const { return pt(bench_.row_height()); }
  // Numbers in the length size and words in the text size share one base line.
  Length row_base() const {
    const Length capitals = bench_.capital(scale_.text) + bench_.capital(scale_.length);
    return (row_height() + capitals.times(1, 2)).times(1, 2);
  }
  Length slot_start(const ColumnPlace& place) const { return place.x + place.content - place.after - place.slot; }
  Length slot_end(const ColumnPlace& place) const { return place.x + place.content - place.after; }

  Slab head_slab() const {
    std::vector<std::vector<Text>> heads;
    std::size_t deepest = 0;
    for (std::size_t k = 0; k < places_.size(); ++k) {
      const Length room = places_[k].number ? places_[k].content - places_[k].after : places_[k].content;
      heads.push_back(bench_.type.lines(with_faces(table_.columns[k].head, Face::condensed_bold), room));
      deepest = std::max(deepest, heads.back().size());
    }
    const Length step = Length::points(scale_.table_head_step);
    const Length base = bench_.base(scale_.table_head_step, scale_.table_head);
    Slab slab;
    for (std::size_t k = 0; k < places_.size(); ++k) {
      Length y = base + step * static_cast<std::int64_t>(deepest - heads[k].size());
      for (const Text& line : heads[k]) {
        if (places_[k].number) {
          set_ending_at(slab.marks, bench_, line, {slot_end(places_[k]), y}, scale_.table_head);
        } else {
          set_lines(slab.marks, bench_, {line}, {places_[k].x, y}, Length(), scale_.table_head);
        }
        y += step;
      }
    }
    slab.height = step * static_cast<std::int64_t>(deepest) + pt(bench_.either(6, 3));
    slab.space_before = pt(bench_.either(4, 2));
    for (std::size_t k = 1; k < deepest; ++k) slab.cuts.push_back(step * static_cast<std::int64_t>(k));
    slab.marks.push_back(level_line(Length(), kLiveWidth, slab.height, kHeadRule));
    slab.keep = Slab::Keep::hard;
    return slab;
  }

  Slab group_slab(const Row& row, bool continued) const {
    Slab slab;
    Text text = row.cells.empty() ? Text{} : made_bold(row.cells.front().text);
    if (continued) text = text + bold(", continued");
    const std::vector<Text> lines = bench_.type.lines(text, kLiveWidth);
    finish_row(slab, lines.size());
    set_lines(slab.marks, bench_, lines, {Length(), row_base()}, bench_.step());
    slab.marks.push_back(level_line(Length(), kLiveWidth, slab.height, scale_.row_rule));
    slab.space_before = Length::points(6);
    slab.keep = Slab::Keep::hard;
    return slab;
  }

  Slab row_slab(const Row& row, bool heavy) const {
    Slab slab;
    const bool total = row.kind == Row::Kind::total;
    if (total) slab.marks.push_back(level_line(Length(), kLiveWidth, Length(), kHeadRule));
    std::size_t deepest = 1;
    for (std::size_t k = 0; k < places_.size() && k < row.cells.size(); ++k) {
      const Column& column = table_.columns[k];
      if (column.kind == Column::Kind::tick) {
        tick(slab, places_[k], row.cells[k]);
      } else if (places_[k].number) {
        number(slab, places_[k], column, number_cell(column, row.cells[k], total));
      } else {
        const Text text = column.bold || total ? made_bold(row.cells[k].text) : closer(row.cells[k].text, bench_);
        const std::vector<Text> lines = bench_.type.lines(text, places_[k].content);
        set_lines(slab.marks, bench_, lines, {places_[k].x, row_base()}, bench_.step());
        deepest = std::max(deepest, lines.size());
      }
    }
    finish_row(slab, deepest);
    slab.marks.push_back(level_line(Length(), kLiveWidth, slab.height, heavy ? kHeadRule : scale_.row_rule));
    return slab;
  }

  void finish_row(Slab& slab, std::size_t lines) const {
    const std::int64_t more = lines == 0 ? 0 : static_cast<std::int64_t>(lines) - 1;
    slab.height = row_height() + bench_.step() * more;
    const Length tail = bench_.step() - bench_.text_base();
    for (std::int64_t k = 0; k < more; ++k) slab.cuts.push_back(row_base() + tail + bench_.step() * k);
  }

  void tick(Slab& slab, const ColumnPlace& place, const Cell& cell) const {
    const bool wanted =
        std::any_of(cell.text.begin(), cell.text.end(), [](const Inline& item) { return item.kind == Inline::Kind::tick_box; });
    if (!wanted) return;
    const Length side = std::min(pt(std::min(scale_.tick_box, 15.0)), place.content);
    const Length middle = row_base() - bench_.capital(scale_.text).times(1, 2);
    slab.marks.push_back(box_outline(Box{place.x, middle - side.times(1, 2), side, side}, scale_.tick_weight));
  }

  void number(Slab& slab, const ColumnPlace& place, const Column& column, const NumberCell& cell) const {
    const double size = number_size(column, scale_);
    const Length base = row_base(), split = slot_start(place);
    const Length gap = column.kind == Column::Kind::estimate ? Length() : squeezed_space(pt(size));
    // Without a whole number a minus stands close to its fraction, not at the end of the whole numbers.
    const bool lone = cell.has_fraction && cell.joined.empty();
    const Length start = split - bench_.type.width(cell.whole, size) + (lone ? gap : Length());
    if (!cell.before.empty()) set_ending_at(slab.marks, bench_, cell.before, {start - kPartGap, base});
    set_lines(slab.marks, bench_, {cell.joined.empty() ? cell.whole : cell.joined}, {start, base}, Length(), size);
    if (lone) set_lines(slab.marks, bench_, {cell.fraction}, {split + gap, base}, Length(), size);
    if (!cell.after.empty()) set_lines(slab.marks, bench_, {cell.after}, {slot_end(place) + kPartGap, base}, Length());
  }

  const Table& table_;
  const Bench& bench_;
  const TypeScale& scale_;
  std::vector<ColumnPlace> places_;
};

}  // namespace

Slabs slabs_of(const Table& table, const Bench& bench) { return TableSetter(table, bench).slabs(); }

}  // namespace gownsheaf
