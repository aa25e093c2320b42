// Stacks slabs on pages: keeps together what belongs together, repeats heads, and sets a sheet closer to save a page.
#pragma once
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "layout/slab.h"

namespace gownsheaf {

// How a sheet was set when its blocks ran over their page by a little.
struct Setting {
  Closeness close = Closeness::usual;
  std::size_t shorter = 0;  // 0: the sheet's blocks, k: its k-th shorter ones
};

// Parts by force only what no page holds.
class PageBuilder {
 public:
  PageBuilder(const PageShape& shape, const Bench& bench);
  void add(const Sheet& sheet, Setting setting);
  // The same of slabs that were made for this sheet and setting before.
  void add(const Sheet& sheet, Setting setting, const Slabs& slabs);
  // The setting that takes fewest pages, the loosest of them; tried only where the last page of the sheet is nearly empty
  // or the sheet has shorter blocks.
  Setting add_best(const Sheet& sheet);
  // Pages without their running matter, and where each section's mark belongs.
  struct Body {
    std::vector<Mark> marks;
    Section section = Section::glance;
    std::optional<Length> changed_at;  // top of the first line of the page with a bar beside it
  };
  // The slabs of the sheet that was added last: what takes the time, and is the same again but for page numbers.
  Slabs take_slabs() { return std::move(slabs_); }
  const std::vector<Body>& pages() const { return pages_; }
  const std::vector<Bookmark>& bookmarks() const { return bookmarks_; }
  const std::map<std::string, int>& anchors() const { return anchors_; }  // page numbers from 1

 private:
  // Where the next slab would stand. `fresh`: nothing above it but a "continued" title.
  struct Place {
    Length y;
    bool fresh = false;
  };
  Slabs slabs_for(const Sheet& sheet, Setting setting);
  void new_page(const Sheet& sheet);
  void continue_page(const Slab* next);
  Place after(Place place, const Slab& slab) const;
  bool fits(const Slabs& slabs, std::size_t first, std::size_t last, Place place) const;
  bool fits(const Slab& slab, Place place) const;
  Place next_page_top(const Slab& next) const;
  bool repeats(const Slab& slab) const;
  void place_chain(const Slabs& slabs, std::size_t first, std::size_t last);
  void place_one(const Slab& slab, bool stays_with_last);
  void place_in_parts(Slab slab);
  void put(const Slab& slab);
  bool joins_last_sheet(const Sheet& sheet, const Slabs& slabs) const;

  const PageShape& shape_;
  Bench bench_;
  Length left_, top_, bottom_;
  std::vector<Body> pages_;
  std::vector<Bookmark> bookmarks_;
  std::map<std::string, int> anchors_;
  Slabs slabs_;
  const Sheet* sheet_ = nullptr;
  std::size_t sheet_start_ = 0;  // page on which the sheet began
  Place place_;
  bool has_content_ = false;  // something to read besides a "continued" title
  bool closed_ = false;       // a gate: nothing after it on this page
};

// Head, holes and section mark of one page, in reading order before the body; where a bar says that a line is changed,
// the word beside the first of them.
std::vector<Mark> running_matter(const PageShape& shape, const Running& running, const Bench& bench, Section section,
                                 std::size_t page, std::size_t pages, std::optional<Length> changed_at = std::nullopt);

}  // namespace gownsheaf
