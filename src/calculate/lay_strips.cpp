#include "calculate/lay_strips.h"

#include <algorithm>
#include <tuple>

#include "calculate/lay_jobs.h"

namespace gownsheaf {
namespace {

LaidStrip strip_of(const Cloth& cloth, std::string name, Length width, Length length) {
  LaidStrip strip;
  strip.name = std::move(name);
  strip.width = width;
  strip.selvage = selvage_of(cloth);
  strip.usable_width = std::max(Length{}, width - 2 * strip.selvage);
  strip.length = length;
  return strip;
}

void fold(const Cloth& cloth, LaidStrip& strip) {
  if (!cloth.fold.known() || *cloth.fold == ClothFold::none) return;
  if (*cloth.fold == ClothFold::crosswise) {
    strip.folded = Folded::crosswise;
    strip.length = strip.length.times(1, 2, Rounding::down);
    return;
  }
  strip.folded = Folded::lengthwise;
  strip.width = strip.width.times(1, 2, Rounding::down);
  strip.usable_width = std::max(Length{}, strip.width - strip.selvage);
}

Length after_shrinking_across(const Cloth& cloth, Length width) {
  const bool shrunk = cloth.shrunk_already.known() && *cloth.shrunk_already;
  if (shrunk || !cloth.shrinks_across.known()) return width;
  const Ratio s = cloth.shrinks_across->of_one;
  return width.times(s.d - s.n, s.d, Rounding::down);
}

Polygon moved_to(Polygon outline, Length x, Length y) {
  for (Point& p : outline) p = {p.x + x, p.y + y};
  return outline;
}

Polygon flipped(Polygon ring, Length at) {  // about y = at / 2
  for (Point& p : ring) p.y = at - p.y;
  return ring;
}

// Lays the jobs on the strips, each from its `begin` on. What is added to the strips counts from their first ends.
class Placing {
 public:
  Placing(const std::vector<Cut>& cuts, const LayAsked& asked, LaidOut& out) : cuts_(cuts), asked_(asked), out_(out) {}

  void lay(const std::vector<LayJob>& jobs, std::vector<LaidStrip>& strips, std::vector<Length> begin) {
    if (jobs.empty()) return;
    const auto drawn = [&](const LayJob& job) { return as_drawn(job); };
    std::vector<LayJob> breadths, others;
    if (std::any_of(jobs.begin(), jobs.end(), drawn))
      for (const LayJob& job : jobs) (cuts_[job.cut].piece.full_width ? breadths : others).push_back(job);
    if (breadths.empty()) return lay_now(jobs, strips, begin);
    lay_now(breadths, strips, begin);
    for (std::size_t k = 0; k < strips.size(); ++k)
      if (strips[k].used > begin[k]) begin[k] = up_to_line(strips[k].used + asked_.gap);
    const Length bound = out_.bound;
    out_.bound = Length{};
    lay_now(others, strips, begin);
    out_.bound = bound.is_zero() || out_.bound.is_zero() ? bound + out_.bound : bound + asked_.gap + out_.bound;
  }

  // Where a matched piece may begin to be counted from.
  Length up_to_line(Length x) const {
    return asked_.repeat && asked_.repeat->along ? x.to_step(*asked_.repeat->along, Rounding::up) : x;
  }

 private:
  bool as_drawn(const LayJob& job) const {
    const Cut& cut = cuts_[job.cut];
    // Cloth that is taken besides, for a repeat, is no part of the outline: then its box is laid, that much longer.
    return asked_.work.outlines > 0 && (cut.bias || !cut.piece.outline.empty()) && cut.takes == cut.piece.along;
  }

  void lay_now(const std::vector<LayJob>& jobs, std::vector<LaidStrip>& strips, const std::vector<Length>& begin) {
    nest::Request request;
    request.gap = asked_.gap;
    for (std::size_t k = 0; k < strips.size(); ++k) {
      const LaidStrip& s = strips[k];
      nest::Strip strip;
      strip.width = s.usable_width;
      if (!s.open) strip.length = std::max(Length{}, s.length - begin[k]);
      for (const Box& bad : s.bad_places) {
        const Length low = std::max(Length{}, bad.y - s.selvage), high = std::min(bad.bottom() - s.selvage, s.usable_width);
        const Length from = std::max(bad.x - begin[k], Length{}), to = std::min(bad.right(), s.length) - begin[k];
        if (low < high && from < to) strip.obstacles.push_back({from, low, to - from, high - low});
      }
      request.strips.push_back(strip);
    }
    std::vector<const LayJob*> job_of_part;
    for (const LayJob& job : jobs) {
      const bool drawn = as_drawn(job);
      nest::Part part = part_of_job(cuts_[job.cut], job, asked_, drawn);
      // On cloth that was folded the lines are counted from its middle, where the fold was.
      if (part.lattice_across && job.lies == Lies::flat && !strips.front().repeat_from.is_zero())
        part.lattice_across->phase += strips.front().repeat_from - strips.front().selvage;
      std::vector<int> goes;
      for (std::size_t k = 0; k < strips.size(); ++k)
        if (goes_on(part, request.strips[k])) goes.push_back(static_cast<int>(k));
      if (goes.empty()) {  // for nest an empty list means any strip
        leave_out(job, -1);
        continue;
      }
      if (goes.size() < strips.size()) part.strips = goes;
      request.parts.push_back(std::move(part));
      job_of_part.push_back(&job);
    }
    if (request.parts.empty() || request.strips.empty()) return;
    request.threads = asked_.work.threads;
    if (const LayWatch* watch = asked_.work.watch) {
      request.stop = watch->stop;
      if (watch->tell)
        request.told = [watch, cloth = cuts_[jobs.front().cut].piece.cloth](double done) { watch->tell(cloth, done); };
    }
    const nest::Lay lay = nest::lay_kept(request, {asked_.work.rectangles, asked_.work.outlines}, asked_.work.store);
    out_.cut_short = out_.cut_short || lay.cut_short;
    if (!lay.unsupported.empty()) out_.unsupported = lay.unsupported;
    out_.bound += lay.bound;
    for (const nest::Placed& p : lay.placed) {
      const auto part = static_cast<std::size_t>(p.part), k = static_cast<std::size_t>(p.strip);
      take(*job_of_part[part], request.parts[part], p, begin[k], strips[k]);
    }
    for (const auto& [part, copy] : lay.left_out) leave_out(*job_of_part[static_cast<std::size_t>(part)], copy);
  }

  static bool goes_on(const nest::Part& part, const nest::Strip& strip) {
    return std::any_of(part.poses.begin(), part.poses.end(), [&](const nest::Pose& pose) {
      const Box box = bounds(nest::posed(part.outline, pose));
      return box.height <= strip.width && (!strip.length || box.width <= *strip.length);
    });
  }

  // which: of the job's places; -1 all of them.
  void leave_out(const LayJob& job, int which) {
    for (std::size_t i = 0; i < job.copies.size(); ++i) {
      if (which >= 0 && static_cast<std::size_t>(which) != i) continue;
      out_.left_out.emplace_back(job.cut, job.copies[i]);
      if (job.also[i] >= 0) out_.left_out.emplace_back(job.cut, job.also[i]);
    }
  }

  void take(const LayJob& job, const nest::Part& part, const nest::Placed& p, Length begin, LaidStrip& strip) {
    const Cut& cut = cuts_[job.cut];
    const auto copy = static_cast<std::size_t>(p.copy);
    LaidPiece piece;
    piece.piece = cut.piece.piece;
    piece.copy = job.copies[copy] + 1;
    piece.also = job.also[copy] + 1;
    piece.on_fold = job.lies == Lies::on_fold;
    piece.bias = cut.bias;
    piece.turned = !cut.bias && p.pose.quarter_turns % 2 != 0;
    const Point at{p.at.x + begin, p.at.y + strip.selvage};
    const Box as_laid = bounds(nest::posed(part.outline, p.pose));
    // The box of its outline; of a rectangle its cut size, not the cloth that it takes besides.
    piece.at = {at.x, at.y, as_laid.width, as_laid.height};
    if (cut.piece.outline.empty() && !cut.bias) (piece.turned ? piece.at.height : piece.at.width) = cut.piece.along;
    if (!cut.piece.outline.empty() || cut.bias) {
      const bool boxed = !as_drawn(job);
      const Polygon ring = cut.piece.outline.empty() ? rectangle(cut.piece.along, cut.piece.across) : cut.piece.outline;
      nest::Pose pose = p.pose;
      if (boxed && cut.bias) pose = {0, false, 45'000};
      piece.mirrored = pose.mirrored && job.lies != Lies::on_fold;
      piece.top_at_right = job.lies == Lies::on_fold ? pose.mirrored : !cut.bias && pose.quarter_turns == (pose.mirrored ? 0 : 2);
      if (cut.bias) piece.top_at_right = pose.quarter_turns == (job.other_hand ? 3 : 2);
      const Polygon shown = job.lies == Lies::on_fold ? half_of(ring) : ring;
      piece.outline = moved_to(nest::posed(shown, pose), at.x, at.y);
      piece.at = bounds(piece.outline);
      for (const LineInPiece& line : cut.piece.lines)
        if (auto points = with_the_ring(shown, line.points, pose, job, cut); !points.empty())
          piece.lines.push_back({line.kind, moved_to(std::move(points), at.x, at.y), line.closed});
    }
    if (cut.piece.match && !cut.bias && !piece.turned && !cut.repeat) {
      const Polygon box = cut.piece.outline.empty() ? rectangle(cut.piece.along, cut.piece.across) : cut.piece.outline;
      const Polygon shown = job.lies == Lies::on_fold ? half_of(box) : box;
      const Polygon points = with_the_ring(shown, {*cut.piece.match}, p.pose, job, cut);
      const bool in_it = contains({Length{}, Length{}, cut.piece.along, cut.piece.across},
                                  {cut.piece.match->x, cut.piece.match->y, Length{}, Length{}});
      if (!points.empty() && in_it) piece.match = Point{points.front().x + at.x, points.front().y + at.y};
    }
    if (cut.piece.full_width) {  // selvage to selvage
      piece.at.y = Length{};
      piece.at.height = piece.on_fold ? cut.piece.across.times(1, 2) : cut.piece.across;
    }
    strip.used =
        std::max(strip.used, at.x + (piece.turned || cut.bias || !cut.piece.outline.empty() ? piece.at.width : cut.takes));
    if (!cut.piece.outline.empty() && cut.takes != cut.piece.along && !piece.turned)
      strip.used = std::max(strip.used, at.x + cut.takes);
    if (strip.folded == Folded::lengthwise) turn_to_the_fold(strip, piece);
    strip.placed.push_back(std::move(piece));
  }

  // Lines in a piece go where its ring goes: posed together with it, and taken out again. Of a half those beyond the fold fall away.
  static Polygon with_the_ring(const Polygon& shown, Polygon points, const nest::Pose& pose, const LayJob& job, const Cut& cut) {
    if (job.lies == Lies::on_fold) {
      const Length middle = cut.piece.across.times(1, 2);
      for (Point& p : points) {
        p.y -= middle;
        if (points.size() == 1 && p.y < Length{}) p.y = -p.y;  // a match point: the other layer's is its mirror image
        if (p.y < Length{}) return {};
      }
    }
    const Box box = bounds(shown);
    for (Point& p : points) {  // posed() begins at the ring's least corner
      p.x = std::clamp(p.x, box.x, box.right());
      p.y = std::clamp(p.y, box.y, box.bottom());
    }
    Polygon both = shown;
    both.insert(both.end(), points.begin(), points.end());
    both = nest::posed(both, pose);
    const Point one = both.front(),
                other = nest::posed(shown, pose).front();  // a point past the turned ring moves its least corner
    for (Point& p : both) p = {p.x + other.x - one.x, p.y + other.y - one.y};
    return Polygon(both.end() - static_cast<std::ptrdiff_t>(points.size()), both.end());
  }

  // nest counts from the fold, a maker from the selvage: the fold is the far edge.
  static void turn_to_the_fold(const LaidStrip& strip, LaidPiece& piece) {
    const Length twice = strip.width + strip.selvage;  // y -> width - (y - selvage)
    piece.at.y = twice - piece.at.bottom();
    if (piece.on_fold && piece.at.height > strip.width - strip.selvage) piece.at.y = Length{};  // a full breadth
    piece.outline = flipped(std::move(piece.outline), twice);
    for (LineInPiece& line : piece.lines) line.points = flipped(std::move(line.points), twice);
    if (piece.match) piece.match->y = twice - piece.match->y;
  }

  const std::vector<Cut>& cuts_;
  const LayAsked& asked_;
  LaidOut& out_;
};

LaidStrip opened_out(const LaidStrip& folded, Length whole_width, bool matched) {
  LaidStrip rest = folded;
  rest.folded = Folded::no;
  rest.name = folded.name + ", in one layer";
  rest.width = whole_width;
  rest.usable_width = whole_width - 2 * folded.selvage;
  if (matched) rest.repeat_from = whole_width.times(1, 2);
  rest.placed.clear();
  rest.used = Length{};
  return rest;
}

// First what is cut double, on the folded strips; then the rest in one layer, on the same lengths behind what is folded, and on
// the flat ones. What found no room double is tried in one layer too. `flat` is then all strips, each folded one followed by its rest.
void lay_folded(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies, const LayAsked& asked,
                Placing& placing, std::vector<LaidStrip>& folded, std::vector<LaidStrip>& flat, LaidOut& out) {
  const Folded way = folded.front().folded;
  const FoldedJobs jobs = folded_jobs(cuts, copies, way);
  const Length half_gap = asked.gap.times(1, 2, Rounding::up);
  placing.lay(jobs.folded, folded, std::vector<Length>(folded.size()));
  if (way == Folded::crosswise) {
    out.bound = 2 * out.bound;
    for (LaidStrip& s : folded) {
      if (s.placed.empty()) continue;
      s.used += half_gap;
      if (!s.open) s.used = std::min(s.used, s.length);
    }
  }
  std::vector<std::vector<int>> rest(cuts.size());
  for (const LayJob& job : jobs.flat) rest[job.cut].insert(rest[job.cut].end(), job.copies.begin(), job.copies.end());
  for (const auto& [cut, copy] : out.left_out) rest[cut].push_back(copy);
  for (std::vector<int>& these : rest) std::sort(these.begin(), these.end());
  out.left_out.clear();
  std::vector<LaidStrip> single;
  for (const LaidStrip& s : folded) {
    const Length whole_length = way == Folded::crosswise ? 2 * s.length : s.length;
    LaidStrip one =
        opened_out(s, way == Folded::lengthwise ? 2 * s.width : s.width, asked.repeat.has_value() && way == Folded::lengthwise);
    if (!s.placed.empty()) one.starts_at = placing.up_to_line(taken(s, nullptr) + asked.gap);
    one.length = s.open ? Length{} : std::max(Length{}, whole_length - one.starts_at);
    one.bad_places.clear();
    single.push_back(std::move(one));
  }
  const std::size_t many = single.size();
  for (LaidStrip& s : flat) single.push_back(std::move(s));
  const Length bound = out.bound;
  out.bound = Length{};
  const std::vector<LayJob> flat_ones = flat_jobs(cuts, rest);
  placing.lay(flat_ones, single, std::vector<Length>(single.size()));
  out.bound = bound.is_zero() || out.bound.is_zero() ? bound + out.bound : bound + asked.gap + out.bound;
  flat.clear();
  for (std::size_t k = 0; k < single.size(); ++k) {
    if (k < many) {
      if (!folded[k].open && !single[k].placed.empty())
        folded[k].length = way == Folded::crosswise ? single[k].starts_at.times(1, 2) : single[k].starts_at;
      flat.push_back(std::move(folded[k]));
    }
    if (k >= many || !single[k].placed.empty()) flat.push_back(std::move(single[k]));
  }
}

}  // namespace

std::vector<std::vector<int>> all_copies(const std::vector<Cut>& cuts) {
  std::vector<std::vector<int>> copies(cuts.size());
  for (std::size_t i = 0; i < cuts.size(); ++i)
    if (cuts[i].in_lay)
      for (int c = 0; c < static_cast<int>(cuts[i].piece.copies); ++c) copies[i].push_back(c);
  return copies;
}

LaidStrip open_strip(const Cloth& cloth) {
  LaidStrip strip = strip_of(cloth, "to buy", *shrunk_width(cloth), {});
  strip.open = true;
  fold(cloth, strip);
  return strip;
}

std::vector<LaidStrip> shelf(const Cloth& cloth) {
  std::vector<LaidStrip> strips;
  if (cloth.bought.known()) {
    const bool one = cloth.bought->size() == 1;
    std::int64_t n = 0;
    for (const BoughtLength& b : *cloth.bought) {
      ++n;
      const Length width = after_shrinking_across(cloth, b.width ? *b.width : *cloth.width);
      strips.push_back(
          strip_of(cloth, one ? "bought length" : "bought length " + whole_number(n), width, laid_length(cloth, b.length)));
      fold(cloth, strips.back());
    }
  }
  const Ratio s = shrinks_along(cloth);
  for (const Remnant& r : cloth.remnants) {
    const auto along = [&](Length l, Rounding way) { return l.times(s.d - s.n, s.d, way); };
    LaidStrip strip =
        strip_of(cloth, "remnant " + r.named.name, after_shrinking_across(cloth, r.width), along(r.length, Rounding::down));
    for (const Box& bad : r.bad_places) {  // rather too large: across it reaches from where it has shrunk to, to where it lay
      const Length x = along(bad.x, Rounding::down), low = after_shrinking_across(cloth, bad.y);
      strip.bad_places.push_back({x, low, along(bad.right(), Rounding::up) - x, bad.bottom() - low});
    }
    strips.push_back(std::move(strip));
  }
  std::stable_sort(strips.begin(), strips.end(), [](const LaidStrip& a, const LaidStrip& b) { return a.length > b.length; });
  return strips;
}

Length taken(const LaidStrip& strip, const LaidStrip* opened) {
  const Length folded = strip.folded == Folded::crosswise ? 2 * strip.used : strip.used;
  return opened != nullptr && !opened->placed.empty() ? opened->starts_at + opened->used : folded;
}

LaidOut lay_on(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies, std::vector<LaidStrip> strips,
               const LayAsked& asked) {
  LaidOut out;
  Placing placing(cuts, asked, out);
  std::vector<LaidStrip> folded, flat;
  for (LaidStrip& s : strips) {
    if (asked.repeat) {
      s.repeat_along = asked.repeat->along;
      s.repeat_across = asked.repeat->across;
      s.repeat_from = s.folded == Folded::lengthwise ? s.width : s.selvage;
    }
    (s.folded == Folded::no ? flat : folded).push_back(std::move(s));
  }
  if (folded.empty()) {
    placing.lay(flat_jobs(cuts, copies), flat, std::vector<Length>(flat.size()));
  } else {
    lay_folded(cuts, copies, asked, placing, folded, flat, out);
  }
  std::sort(out.left_out.begin(), out.left_out.end());
  for (LaidStrip& s : flat)
    std::sort(s.placed.begin(), s.placed.end(), [](const LaidPiece& a, const LaidPiece& b) {
      return std::tie(a.at.x, a.at.y, a.piece, a.copy) < std::tie(b.at.x, b.at.y, b.piece, b.copy);
    });
  out.strips = std::move(flat);
  return out;
}

}  // namespace gownsheaf
