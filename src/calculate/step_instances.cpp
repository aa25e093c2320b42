#include "calculate/step_instances.h"

#include <algorithm>
#include <map>

namespace gownsheaf {
namespace {

constexpr std::int64_t kAfterAnchor = 1000000;  // own steps come after library steps that stand at the same place

struct Group {  // all instances of one library step
  std::size_t first = 0, end = 0;
};

class Builder {
 public:
  Builder(const Project& project, const Templates& templates, const FactLookup& facts)
      : project_(project), templates_(templates), facts_(facts) {}

  StepInstances build() {
    for (std::size_t i = 0; i < templates_.steps.size(); ++i) add_library_step(i);
    own_first_ = out_.steps.size();
    for (const OwnStep& own : project_.work.own_steps)
      out_.steps.push_back({nullptr, &own, "own/" + own.named.name, "", Truth::yes, false});
    out_.nodes.resize(out_.steps.size());
    place_own_steps();
    stands_for_.resize(out_.steps.size());
    find_replaced();
    for (std::size_t i = 0; i < out_.steps.size(); ++i) add_edges(i);
    change_steps();
    mark_done();
    return std::move(out_);
  }

 private:
  void add_library_step(std::size_t index) {
    const Step& step = templates_.steps[index];
    Group group{out_.steps.size(), 0};
    if (step.for_each.empty()) {
      out_.steps.push_back({&step, nullptr, step.id, "", step.when.holds(facts_, ""), false});
    } else {
      for (const std::string& item : items_of(project_, step.for_each))
        out_.steps.push_back({&step, nullptr, step.id + "@" + item, item, step.when.holds(facts_, item), false});
    }
    // A step without a single item is absent as a whole; what it waits for must still pass on.
    if (out_.steps.size() == group.first) out_.steps.push_back({&step, nullptr, step.id, "", Truth::no, false});
    group.end = out_.steps.size();
    groups_.emplace(step.id, group);
    // A step of the same sitting stands beside the one it goes with.
    std::size_t anchor = index;
    if (!step.with.empty())
      for (std::size_t k = 0; k < templates_.steps.size(); ++k)
        if (templates_.steps[k].id == step.with) anchor = k;
    const auto beside = anchor == index ? 0 : static_cast<std::int64_t>(index) + 1;
    for (std::size_t i = group.first; i < group.end; ++i) {
      StepNode node;
      node.present = out_.steps[i].holds != Truth::no;
      node.rank = {static_cast<std::int64_t>(anchor), beside, static_cast<std::int64_t>(i - group.first)};
      out_.nodes.push_back(std::move(node));
    }
  }

  std::vector<std::size_t> resolve_id(const std::string& id) const {
    std::vector<std::size_t> found;
    if (const auto group = groups_.find(id); group != groups_.end()) {
      for (std::size_t i = group->second.first; i < group->second.end; ++i) found.push_back(i);
      return found;
    }
    for (std::size_t i = 0; i < out_.steps.size(); ++i)
      if (same_name(out_.steps[i].id, id)) found.push_back(i);
    return found;
  }

  // An own step stands after the last step it waits for, else before the first that waits for it, else at the end.
  void place_own_steps() {
    const auto count = static_cast<std::int64_t>(templates_.steps.size());
    for (std::size_t i = own_first_; i < out_.steps.size(); ++i) {
      const OwnStep& own = *out_.steps[i].own;
      const auto number = static_cast<std::int64_t>(i - own_first_);
      std::int64_t last = -1, first = count;
      for (const std::string& id : own.after)
        for (const std::size_t k : resolve_id(id))
          if (k < own_first_) last = std::max(last, out_.nodes[k].rank[0]);
      for (const std::string& id : own.before)
        for (const std::size_t k : resolve_id(id))
          if (k < own_first_) first = std::min(first, out_.nodes[k].rank[0]);
      auto& rank = out_.nodes[i].rank;
      if (last >= 0) rank = {last, kAfterAnchor, number};
      else if (first < count) rank = {first, -1, number};
      else rank = {count, 0, number};
    }
  }

  void find_replaced() {
    for (std::size_t i = 0; i < own_first_; ++i) {
      const StepInstance& r = out_.steps[i];
      if (r.step->replaces.empty() || r.holds != Truth::yes) continue;
      const auto group = groups_.find(r.step->replaces);
      if (group == groups_.end()) continue;
      for (std::size_t k = group->second.first; k < group->second.end; ++k) {
        if (k == i) continue;
        const bool item_by_item = out_.steps[k].step->for_each == r.step->for_each;
        if (item_by_item && out_.steps[k].item != r.item) continue;
        stands_for_[k].push_back(i);
        out_.nodes[k].present = false;
      }
    }
  }

  // Who stands for an instance now: itself, or those that took its place (once over; a replacement may be replaced too).
  void standing_for(std::size_t i, std::vector<std::size_t>& into, int depth) const {
    if (stands_for_[i].empty() || depth > 8) {
      into.push_back(i);
      return;
    }
    for (const std::size_t k : stands_for_[i]) standing_for(k, into, depth + 1);
  }

  void add_edge(std::size_t later, std::size_t earlier, bool hard, const std::string& because) {
    std::vector<std::size_t> from, to;
    standing_for(earlier, from, 0);
    standing_for(later, to, 0);
    for (const std::size_t b : to)
      for (const std::size_t a : from) {
        const bool by_replacing = a == b && (a != earlier || b != later);
        if (!by_replacing) out_.nodes[b].after.push_back({a, hard, because});
      }
  }

  void add_edges(std::size_t i) {
    const StepInstance& s = out_.steps[i];
    if (s.step != nullptr) {
      for (const After& after : s.step->after)
        for (const std::size_t k : resolve_id(after.id)) {
          const bool item_by_item = !s.item.empty() && k < own_first_ && out_.steps[k].step->for_each == s.step->for_each;
          if (item_by_item && out_.steps[k].item != s.item) continue;
          add_edge(i, k, after.hard, after.because);
        }
      return;
    }
    for (const std::string& id : s.own->after)
      for (const std::size_t k : resolve_id(id)) add_edge(i, k, true, s.own->because);
    for (const std::string& id : s.own->before)
      for (const std::size_t k : resolve_id(id)) add_edge(k, i, true, s.own->because);
  }

  // Those that an id of the maker means, replaced ones by what took their place.
  std::vector<std::size_t> meant_by(const std::string& id) const {
    std::vector<std::size_t> standing;
    for (const std::size_t k : resolve_id(id)) standing_for(k, standing, 0);
    return standing;
  }

  void change_steps() {
    for (const ChangedStep& change : project_.work.changes)
      for (const std::size_t k : meant_by(change.step)) {
        out_.steps[k].change = &change;
        if (change.drop) out_.nodes[k].present = false;
        for (const std::string& id : change.after)
          for (const std::size_t earlier : meant_by(id))
            if (earlier != k) out_.nodes[k].after.push_back({earlier, true, change.drop ? std::string() : change.because});
      }
  }

  static bool every_part_done(const StepInstance& step) {
    return step.change != nullptr && std::all_of(step.change->parts.begin(), step.change->parts.end(),
                                                 [&](const StepPart& p) { return step.parts_done.count(p.part) > 0; });
  }

  void mark_done() {
    for (const DoneStep& done : project_.work.done)
      for (const std::size_t k : resolve_id(done.step)) {
        std::vector<std::size_t> standing;
        standing_for(k, standing, 0);
        for (const std::size_t s : standing) {
          StepInstance& step = out_.steps[s];
          if (!done.part.empty()) step.parts_done.insert(done.part);
          if (!done.part.empty() && !every_part_done(step)) continue;
          step.done = true;
          if (step.done_by == nullptr) step.done_by = &done;
        }
      }
  }

  const Project& project_;
  const Templates& templates_;
  const FactLookup& facts_;
  StepInstances out_;
  std::map<std::string, Group, std::less<>> groups_;
  std::vector<std::vector<std::size_t>> stands_for_;
  std::size_t own_first_ = 0;
};

}  // namespace

std::vector<std::string> items_of(const Project& project, const std::string& for_each) {
  std::vector<std::string> items;
  if (for_each == "cloth") {
    const auto outer = [](const Cloth& c) { return c.used_as.known() && *c.used_as == UsedAs::outer; };
    for (const Cloth& c : project.cloths)
      if (outer(c)) items.push_back(c.named.name);
    for (const Cloth& c : project.cloths)
      if (!outer(c)) items.push_back(c.named.name);
  } else if (for_each == "run") {
    for (const PleatRun& r : project.pleats) items.push_back(r.named.name);
  } else if (for_each == "piece") {
    for (const Piece& p : project.pieces) items.push_back(p.named.name);
  } else if (for_each == "closure") {
    for (const Closure& c : project.closures) items.push_back(c.named.name);
  } else if (for_each == "bone") {
    for (const Bone& b : project.bones) items.push_back(b.named.name);
  }
  return items;
}

StepInstances step_instances(const Project& project, const Templates& templates, const FactLookup& facts) {
  return Builder(project, templates, facts).build();
}

}  // namespace gownsheaf
