#include "layout/page_builder.h"

#include <algorithm>
#include <stdexcept>

namespace gownsheaf {

namespace {

constexpr Length kBetweenSheets = Length::points(16);
constexpr double kBarFrom = 14, kBarWide = 4;  // left of the live area
constexpr std::size_t kMostPages = 6;          // of a sheet that is set again: of a long one a page more is little
constexpr double kFewLines = 0.4;              // of a page: what is worth setting tight to save

// Everything that stands above `cut`, and the rest moved up by it.
std::pair<Slab, Slab> part(const Slab& slab, Length cut) {
  Slab upper = slab, lower = slab;
  upper.marks.clear();
  lower.marks.clear();
  upper.height = cut;
  upper.ends_page = false;
  lower.height = slab.height - cut;
  for (const Mark& mark : slab.marks) {
    if (middle_y(mark) <= cut) {
      upper.marks.push_back(mark);
    } else {
      lower.marks.push_back(moved(mark, Length(), -cut));
    }
  }
  upper.cuts.clear();
  lower.cuts.clear();
  for (Length c : slab.cuts) {
    if (c > cut) lower.cuts.push_back(c - cut);
  }
  lower.space_before = Length();
  lower.rule_above = lower.rule_at_top = 0;
  return {std::move(upper), std::move(lower)};
}

std::string whole_points(Length length) { return whole_number(count_of(length, Length::points(1), Rounding::up)); }

}  // namespace

PageBuilder::PageBuilder(const PageShape& shape, const Bench& bench)
    : shape_(shape), bench_(bench), left_(pt(shape.left)), top_(pt(shape.top)), bottom_(pt(shape.bottom)) {}

void PageBuilder::new_page(const Sheet& sheet) {
  pages_.push_back({{}, sheet.section, std::nullopt});
  place_ = {top_, false};
  has_content_ = closed_ = false;
}

void PageBuilder::continue_page(const Slab* next) {
  new_page(*sheet_);
  put(continued_slab(*sheet_, bench_));
  place_.fresh = true;
  has_content_ = false;
  if (next == nullptr || !repeats(*next)) return;
  for (const Slab& slab : *next->again) put(slab);
  has_content_ = false;
}

bool PageBuilder::repeats(const Slab& slab) const {
  if (slab.again == nullptr) return false;
  Length height;
  for (const Slab& head : *slab.again) height += head.height;
  return height * 2 <= bottom_ - top_;  // a head that leaves no room for rows is not repeated
}

PageBuilder::Place PageBuilder::after(Place place, const Slab& slab) const {
  if (slab.gap && place.fresh) return place;
  if (!place.fresh) place.y += slab.space_before;
  return {place.y + slab.height, false};
}

bool PageBuilder::fits(const Slabs& slabs, std::size_t first, std::size_t last, Place place) const {
  for (std::size_t i = first; i <= last; ++i) {
    place = after(place, slabs[i]);
    if (place.y > bottom_ && !slabs[i].gap) return false;
  }
  return true;
}

bool PageBuilder::fits(const Slab& slab, Place place) const { return slab.gap || after(place, slab).y <= bottom_; }

PageBuilder::Place PageBuilder::next_page_top(const Slab& next) const {
  Place place{top_ + continued_slab(*sheet_, bench_).height, true};
  if (repeats(next)) {
    for (const Slab& slab : *next.again) place = after(place, slab);
  }
  return place;
}

void PageBuilder::put(const Slab& slab) {
  if (slab.gap && place_.fresh) return;
  std::vector<Mark>& marks = pages_.back().marks;
  const Length top = place_.fresh ? place_.y : place_.y + slab.space_before;
  const double rule = place_.fresh ? slab.rule_at_top : slab.rule_above;
  if (rule > 0) marks.push_back(level_line(left_, left_ + kLiveWidth, top, rule));
  if (slab.changed) {
    marks.push_back(fill(path_of(Box{left_ - pt(kBarFrom), top, pt(kBarWide), slab.height}), Ink::black));
    if (!pages_.back().changed_at) pages_.back().changed_at = top;
  }
  append_moved(marks, slab.marks, left_, top);
  for (const Mark& mark : slab.marks) {
    const auto* anchor = std::get_if<AnchorMark>(&mark.what);
    if (anchor != nullptr) anchors_.emplace(anchor->name, static_cast<int>(pages_.size()));
  }
  place_ = after(place_, slab);
  has_content_ = true;
  closed_ = slab.ends_page;
}

void PageBuilder::place_in_parts(Slab slab) {
  for (;;) {
    if (!closed_ && fits(slab, place_)) return put(slab);
    const Length top = place_.fresh ? place_.y : place_.y + slab.space_before;
    const auto beyond = std::upper_bound(slab.cuts.begin(), slab.cuts.end(), bottom_ - top);
    if (closed_ || beyond == slab.cuts.begin()) {
      if (has_content_ || closed_) {
        continue_page(&slab);
        continue;
      }
      if (slab.cuts.empty() && slab.height > bottom_ - top_) {
        throw std::length_error(slab.drawing + " is " + whole_points(slab.height) + " points high; a page holds " +
                                whole_points(bottom_ - top_));
      }
      // It needs the room of the "continued" title too.
      pages_.back().marks.clear();
      place_ = {top_, true};
      return put(slab);
    }
    auto [upper, lower] = part(slab, *(beyond - 1));
    put(upper);
    slab = std::move(lower);
    continue_page(&slab);
  }
}

void PageBuilder::place_one(const Slab& slab, bool stays_with_last) {
  if (!closed_ && fits(slab, place_)) return put(slab);
  const bool fits_next = fits(slab, next_page_top(slab));
  if (fits_next && has_content_ && !(stays_with_last && !slab.cuts.empty())) {
    continue_page(&slab);
    return put(slab);
  }
  place_in_parts(slab);
}

void PageBuilder::place_chain(const Slabs& slabs, std::size_t first, std::size_t last) {
  const auto put_all = [&] {
    for (std::size_t i = first; i <= last; ++i) put(slabs[i]);
  };
  if (!closed_ && fits(slabs, first, last, place_)) return put_all();
  if (has_content_ && fits(slabs, first, last, next_page_top(slabs[first]))) {
    continue_page(&slabs[first]);
    return put_all();
  }
  // No page holds the chain, so its softest links give first.
  for (std::size_t i = first; i < last; ++i) {
    if (slabs[i].keep != Slab::Keep::soft) continue;
    place_chain(slabs, first, i);
    return place_chain(slabs, i + 1, last);
  }
  if (has_content_ && first < last) continue_page(&slabs[first]);
  for (std::size_t i = first; i <= last; ++i) place_one(slabs[i], i > first);
}

bool PageBuilder::joins_last_sheet(const Sheet& sheet, const Slabs& slabs) const {
  if (pages_.empty() || sheet.starts_page || closed_) return false;
  const bool last_is_whole = sheet_start_ + 1 == pages_.size();
  if (slabs.empty() || (!last_is_whole && pages_.back().section != sheet.section)) return false;
  const Place place{place_.y + kBetweenSheets + pt(bench_.either(8, 6)), false};
  return fits(slabs, 0, slabs.size() - 1, place);
}

Setting PageBuilder::add_best(const Sheet& sheet) {
  const std::size_t pages = pages_.size(), bookmarks = bookmarks_.size();
  const Place place = place_;
  const bool closed = closed_;
  const std::size_t start = sheet_start_;
  const auto take_back = [&] {  // a sheet of several pages shares none: those before it are as they were
    pages_.resize(pages);
    bookmarks_.resize(bookmarks);
    std::erase_if(anchors_, [&](const auto& anchor) { return static_cast<std::size_t>(anchor.second) > pages; });
    place_ = place;
    closed_ = closed;
    sheet_start_ = start;
  };
  const auto ends_with_few_lines = [&] { return (place_.y - top_).in_points() / (bottom_ - top_).in_points() <= kFewLines; };
  const auto used = [&] { return pages_.size() - pages; };
  add(sheet, Setting());
  // A sheet that shares a page is whole on it.
  if (used() < 2 || used() > kMostPages || (!ends_with_few_lines() && sheet.shorter.empty())) return Setting();
  struct Try {
    Setting setting;
    std::size_t pages;
    Slabs slabs;
  };
  const auto kept = [&](Setting setting) { return Try{setting, used(), take_slabs()}; };
  const auto tried = [&](Closeness close, std::size_t shorter) {
    take_back();
    add(sheet, {close, shorter});
    return kept({close, shorter});
  };
  const std::size_t loosest = used();
  Try best = kept(Setting());
  for (std::size_t k = 0; k <= sheet.shorter.size() && best.pages == loosest; ++k) {
    if (k > 0) {
      Try words = tried(Closeness::usual, k);
      if (words.pages < best.pages) best = std::move(words);
      if (best.pages == 1 || (best.pages < loosest && !ends_with_few_lines())) break;
    }
    // What the closest way does not save, none does.
    Try closest = tried(Closeness::condensed, k);
    if (closest.pages >= best.pages) continue;
    Try tight = tried(Closeness::tight, k);
    best = std::move(tight.pages <= closest.pages ? tight : closest);
  }
  take_back();
  slabs_ = std::move(best.slabs);
  add(sheet, best.setting, slabs_);
  return best.setting;
}

Slabs PageBuilder::slabs_for(const Sheet& sheet, Setting setting) {
  bench_.close = setting.close;
  Slabs slabs = title_slabs(sheet, bench_);
  const std::vector<Block> shorter = setting.shorter == 0 ? std::vector<Block>{} : sheet.shorter.at(setting.shorter - 1)();
  for (Slab& slab : slabs_of(setting.shorter == 0 ? sheet.blocks : shorter, bench_)) slabs.push_back(std::move(slab));
  while (!slabs.empty() && slabs.back().gap) slabs.pop_back();
  return slabs;
}

void PageBuilder::add(const Sheet& sheet, Setting setting) {
  slabs_ = slabs_for(sheet, setting);
  add(sheet, setting, slabs_);
}

void PageBuilder::add(const Sheet& sheet, Setting setting, const Slabs& slabs) {
  bench_.close = setting.close;
  if (slabs.empty()) return;
  if (joins_last_sheet(sheet, slabs)) {
    place_.y += kBetweenSheets;
    pages_.back().marks.push_back(level_line(left_, left_ + kLiveWidth, place_.y, kHeavyRule));
    place_.y += pt(bench_.either(8, 6));
  } else {
    new_page(sheet);
  }
  sheet_ = &sheet;
  sheet_start_ = pages_.size() - 1;

  const int page = static_cast<int>(pages_.size()) - 1;
  const std::string section(word_for(sheet.section));
  const auto open = std::find_if(bookmarks_.rbegin(), bookmarks_.rend(), [](const Bookmark& b) { return b.level == 0; });
  if (open == bookmarks_.rend() || open->title != section) bookmarks_.push_back({section, 0, page, place_.y});
  bookmarks_.push_back({sheet.title, 1, page, place_.y});

  for (std::size_t first = 0; first < slabs.size();) {
    std::size_t last = first;
    while (last + 1 < slabs.size() && slabs[last].keep != Slab::Keep::no) ++last;
    place_chain(slabs, first, last);
    first = last + 1;
  }
}

}  // namespace gownsheaf
