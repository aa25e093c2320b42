#include "calculate/lay_jobs.h"

#include <algorithm>

#include "calculate/match_places.h"
#include "geometry/slabs.h"

namespace gownsheaf {
namespace {

// By a half drop every other breadth begins half a repeat lower, so that its motif meets its neighbour's.
bool drops(const Cut& cut, int copy) { return cut.half_drop && copy % 2 != 0; }
// The second of each pair is the other hand's: its outline mirrored.
bool other_hand(const Cut& cut, int copy) { return cut.piece.pair && !cut.piece.outline.empty() && copy % 2 != 0; }

Polygon ring_of(const Cut& cut, Length across) {
  return cut.piece.outline.empty() ? rectangle(cut.takes, across) : cut.piece.outline;
}

// How a piece may lie, its top to the left first. A mirrored one is flipped across the cloth; the half on the fold is turned
// end for end by being mirrored along it.
std::vector<nest::Pose> poses_of(const Cut& cut, const LayJob& job, bool drawn) {
  if (job.lies == Lies::on_fold) {
    std::vector<nest::Pose> poses{{0, false}};
    if (drawn && cut.end_for_end) poses.push_back({0, true});
    return poses;
  }
  const bool mirrored = job.other_hand;
  if (cut.bias) {  // at 45 degrees, and the other hand at the mirrored 315
    const int first = mirrored ? 1 : 0;
    std::vector<nest::Pose> poses{{first, mirrored, 45'000}};
    if (cut.end_for_end) poses.push_back({first + 2, mirrored, 45'000});
    if (cut.may_turn) {
      poses.push_back({first + 1, mirrored, 45'000});
      poses.push_back({(first + 3) % 4, mirrored, 45'000});
    }
    return poses;
  }
  const int upright = mirrored ? 2 : 0;
  std::vector<nest::Pose> poses{{upright, mirrored}};
  if (drawn && cut.end_for_end && !(cut.piece.match && !cut.piece.outline.empty())) poses.push_back({2 - upright, mirrored});
  if (cut.may_turn && !cut.piece.match) poses.push_back({1, mirrored});
  if (cut.may_turn && !cut.piece.match && drawn) poses.push_back({3, mirrored});
  return poses;
}

// Where the match point lies from the least corner of the posed part.
Point match_of(const Cut& cut, const LayJob& job, const nest::Pose& pose) {
  Point p = *cut.piece.match;
  const Box box{Length{}, Length{}, cut.piece.along, cut.piece.across};
  if (job.lies == Lies::on_fold) {
    const Length middle = box.height.times(1, 2);
    p.y = p.y < middle ? middle - p.y : p.y - middle;
  }
  if (pose.mirrored) p.y = box.height - p.y;  // mirrored and turned by half: flipped across the cloth
  return p;
}

}  // namespace

std::vector<LayJob> flat_jobs(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies) {
  std::vector<LayJob> jobs;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    LayJob one{i}, two{i};
    for (const int c : copies[i]) {
      const bool second = drops(cuts[i], c) || other_hand(cuts[i], c);
      LayJob& job = second ? two : one;
      job.drops = drops(cuts[i], c);
      job.other_hand = other_hand(cuts[i], c);
      job.copies.push_back(c);
    }
    for (LayJob* job : {&one, &two})
      if (!job->copies.empty()) {
        job->also.assign(job->copies.size(), -1);
        jobs.push_back(std::move(*job));
      }
  }
  return jobs;
}

FoldedJobs folded_jobs(const std::vector<Cut>& cuts, const std::vector<std::vector<int>>& copies, Folded folded) {
  FoldedJobs jobs;
  std::vector<std::vector<int>> rest(cuts.size());
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const Cut& cut = cuts[i];
    const CutPiece& c = cut.piece;
    const bool lengthwise = folded == Folded::lengthwise;
    if (copies[i].empty()) continue;
    if (lengthwise && !cut.bias && !c.kept && !cut.half_drop && (c.on_fold || c.full_width)) {
      jobs.folded.push_back({i, Lies::on_fold, false, false, copies[i], std::vector<int>(copies[i].size(), -1)});
      continue;
    }
    const bool alike = c.outline.empty() || symmetric_across(c.outline);
    const bool double_cut =
        !c.kept && !c.full_width && !c.on_fold && (c.pair || alike) && !(folded == Folded::crosswise && c.match);
    if (!double_cut) {
      rest[i] = copies[i];
      continue;
    }
    LayJob job{i, Lies::doubled};
    for (std::size_t k = 0; k < copies[i].size(); ++k) {
      // A pair lies together; where it was torn apart, or the last is odd, one is cut by itself.
      const bool together =
          k + 1 < copies[i].size() && (!c.pair || (copies[i][k] % 2 == 0 && copies[i][k + 1] == copies[i][k] + 1));
      if (!together) {
        rest[i].push_back(copies[i][k]);
        continue;
      }
      job.copies.push_back(copies[i][k]);
      job.also.push_back(copies[i][++k]);
    }
    if (!job.copies.empty()) jobs.folded.push_back(std::move(job));
  }
  jobs.flat = flat_jobs(cuts, rest);
  return jobs;
}

Polygon half_of(const Polygon& ring) {
  const Polygon upright = nest::posed(ring, {1, false});  // across now runs along x, the far side first
  const Box box = bounds(upright);
  return nest::posed(clipped_along(upright, Length{}, box.width.times(1, 2)), {3, false});
}

bool symmetric_across(const Polygon& ring) {
  const Box box = bounds(ring);
  std::vector<Point> here(ring.begin(), ring.end()), there;
  for (const Point& p : ring) there.push_back({p.x, box.y + box.bottom() - p.y});
  std::sort(here.begin(), here.end());
  std::sort(there.begin(), there.end());
  const Length near = Length::tenth_mm(5);
  const auto off = [&](Length a, Length b) { return (a < b ? b - a : a - b) > near; };
  for (const Point& p : here)  // a corner of the one for each of the other
    if (std::none_of(there.begin(), there.end(), [&](const Point& q) { return !off(p.x, q.x) && !off(p.y, q.y); })) return false;
  return true;
}

nest::Part part_of_job(const Cut& cut, const LayJob& job, const LayAsked& asked, bool drawn) {
  const bool half = job.lies == Lies::on_fold;
  const Length across = cut.piece.full_width ? asked.breadth_usable : cut.piece.across;
  nest::Part part;
  part.copies = static_cast<int>(job.copies.size());
  const Polygon ring = drawn ? ring_of(cut, across) : rectangle(cut.takes, across);
  part.outline =
      half ? (drawn && !cut.piece.outline.empty() ? half_of(ring) : rectangle(cut.takes, across.times(1, 2, Rounding::up)))
           : ring;
  if (cut.bias && !drawn) {  // the box of the piece as it will lie
    const Box box = bounds(nest::posed(ring_of(cut, across), {0, false, 45'000}));
    part.outline = rectangle(box.width, box.height);
    part.poses = {{0, false}};
    return part;
  }
  part.poses = poses_of(cut, job, drawn && !cut.piece.outline.empty());
  if (cut.piece.full_width || half) part.fixed_y = Length{};
  if (job.lies == Lies::doubled) part.clear_of_first_edge = asked.gap.times(1, 2, Rounding::up);
  if (cut.repeat) part.lattice = nest::Part::Lattice{*cut.repeat, job.drops ? cut.repeat->times(1, 2) : Length{}};
  if (cut.piece.match && asked.repeat && !cut.bias && !cut.repeat) {
    const Point p = match_of(cut, job, part.poses.front());
    const Repeat repeat = laid_repeat(*asked.repeat);
    if (repeat.along) part.lattice = nest::Part::Lattice{*repeat.along, -p.x};
    if (repeat.across && !part.fixed_y) part.lattice_across = nest::Part::Lattice{*repeat.across, -p.y};
  }
  return part;
}

}  // namespace gownsheaf
