#include "calculate/fitting_share.h"

#include <algorithm>

namespace gownsheaf {
namespace {

constexpr std::string_view kTrunk[] = {"bust", "high bust", "underbust", "chest", "waist", "hip"};
constexpr std::string_view kArm[] = {"upper arm", "elbow", "wrist"};
constexpr std::string_view kOtherGirths[] = {"neck", "armhole", "head", "thigh", "calf"};

template <class Words>
bool one_of(const Words& words, std::string_view name) {
  return std::any_of(std::begin(words), std::end(words), [&](std::string_view w) { return same_name(w, name); });
}

bool is_girth(std::string_view name) { return one_of(kTrunk, name) || one_of(kArm, name) || one_of(kOtherGirths, name); }
bool waist_or_ribs(std::string_view name) { return same_name(name, "waist") || same_name(name, "underbust"); }

bool crosses(const Seam& seam, std::string_view girth) {
  if (one_of(kArm, girth)) return seam.kind == "sleeve";
  if (!one_of(kTrunk, girth)) return false;
  return seam.kind == "side" || seam.kind == "princess" || seam.kind == "centre back" ||
         (seam.kind == "dart" && waist_or_ribs(girth));
}

void add_seam(Sharing& sharing, const Seam& seam) {
  sharing.edges += 2 * seam.number;
  sharing.seams.push_back(seam.named.name);
}

std::int64_t pleats_of(const PleatRun& run) {
  return run.count.known() && run.kind != PleatKind::plain ? *run.count * (run.half ? 2 : 1) : 0;
}

// Pleats that the runs of a round have written; of runs that lie in no round, all.
std::int64_t pleats_in(const Project& project, const Round* round) {
  std::int64_t n = 0;
  for (const PleatRun& run : project.pleats) {
    const bool in = round == nullptr || std::any_of(round->runs.begin(), round->runs.end(),
                                                    [&](const std::string& r) { return same_name(r, run.named.name); });
    if (in) n += pleats_of(run);
  }
  return n;
}

bool has_bodice(const Project& project) {
  return std::any_of(project.pieces.begin(), project.pieces.end(), [](const Piece& p) {
    return p.part_of.known() && (*p.part_of == PartOf::bodice || *p.part_of == PartOf::corset);
  });
}

Sharing over_pleats(std::int64_t pleats) { return {ChangeRule::pleats, pleats, {}, pleats > 0}; }

}  // namespace

Sharing seams_across(const Project& project, const std::string& girth) {
  Sharing sharing{ChangeRule::girth, 0, {}, true};
  for (const Seam& seam : project.seams)
    if (crosses(seam, girth)) add_seam(sharing, seam);
  sharing.known = sharing.edges > 0;
  return sharing;
}

Sharing sharing_at(const Project& project, const Finding& finding) {
  const bool of_girth = finding.is == "loose" || finding.is == "tight";
  if (!finding.shared_over.empty()) {
    Sharing sharing{ChangeRule::girth, 0, {}, true};
    for (const std::string& name : finding.shared_over)
      if (const Seam* seam = project.seam(name); seam != nullptr) add_seam(sharing, *seam);
    sharing.known = sharing.edges > 0;
    return sharing;
  }
  if (const Round* round = project.round(finding.where)) return over_pleats(pleats_in(project, round));
  if (const EdgeLine* edge = project.edge(finding.where)) {
    if (edge->kind.ends_with("closing")) return {ChangeRule::closing, 2, {}, true};
    if (edge->kind == "lower edge") return {ChangeRule::top, 1, {}, true};
    return {of_girth || finding.is == "gapes" ? ChangeRule::wedge : ChangeRule::point, 2, {}, true};
  }
  if (same_name(finding.where, "shoulder")) return {ChangeRule::shoulder_tip, 1, {}, true};
  if (same_name(finding.where, "waist to floor")) return {ChangeRule::top, 1, {}, true};
  if (!is_girth(finding.where)) return {ChangeRule::point, 1, {}, true};
  if (!of_girth) return {finding.is == "gapes" ? ChangeRule::wedge : ChangeRule::point, 2, {}, true};
  if (one_of(kOtherGirths, finding.where)) return {ChangeRule::wedge, 2, {}, true};
  if (same_name(finding.where, "waist") && !has_bodice(project))
    if (const std::int64_t pleats = pleats_in(project, nullptr); pleats > 0) return over_pleats(pleats);
  return seams_across(project, finding.where);
}

}  // namespace gownsheaf
