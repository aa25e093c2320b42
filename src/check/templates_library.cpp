// The step library as a whole: ids that steps name, and rings. A ring of hard edges is a fault even where conditions
// keep its steps apart today.
#include <algorithm>
#include <map>

#include "check/template_block.h"

namespace gownsheaf {
namespace {

class Library {
 public:
  Library(const Templates& all, Diagnostics& diag) : steps_(all.steps), diag_(diag) {
    for (std::size_t i = 0; i < steps_.size(); ++i) index_.emplace(steps_[i].id, i);
  }

  void check() {
    for (const Step& s : steps_) {
      for (const After& after : s.after) known(after.id, after.at, "after");
      known(s.with, s.at, "with");
      known(s.replaces, s.at, "replaces");
      for (const std::string& fact : s.when.facts_used())
        if (fact == "late cloth" || fact == "hours short")
          diag_.error("fact-item", s.at,
                      "`" + fact + "` is known only when the steps are laid on their days; `" + s.id + "` is one of them.",
                      "ask it on a sheet or a caution");
      if (s.replaces == s.id || s.with == s.id)
        diag_.error("unknown-step", s.at, "`" + s.id + "` names itself.", "name another step");
    }
    rings();
  }

 private:
  void known(const std::string& id, const SourceSpan& at, const std::string& key) {
    if (id.empty() || index_.count(id) > 0) return;
    std::vector<std::string> ids;
    for (const Step& s : steps_) ids.push_back(s.id);
    const std::string near = did_you_mean(id, ids);
    diag_.error("unknown-step", at, "No step is called `" + id + "` (`" + key + "`).",
                near.empty() ? "ids are those of the library's files" : "did you mean `" + near + "`?");
  }

  // Steps that must come before step i. A step that replaces another waits for what that one waits for, and whoever waits
  // for the replaced step waits for it.
  std::vector<std::size_t> before(std::size_t i) const {
    std::vector<std::size_t> all;
    const auto add_edges_of = [&](const Step& s) {
      for (const After& after : s.after) {
        const auto at = index_.find(after.id);
        if (!after.hard || at == index_.end()) continue;
        all.push_back(at->second);
        for (std::size_t k = 0; k < steps_.size(); ++k)
          if (k != i && steps_[k].replaces == after.id && steps_[i].replaces != after.id) all.push_back(k);
      }
    };
    add_edges_of(steps_[i]);
    if (const auto at = index_.find(steps_[i].replaces); at != index_.end() && at->second != i) add_edges_of(steps_[at->second]);
    // A step and its replacement never stand side by side, so neither waits for the other.
    all.erase(std::remove_if(all.begin(), all.end(),
                             [&](std::size_t k) {
                               return (k != i && steps_[k].id == steps_[i].replaces) ||
                                      (k != i && steps_[k].replaces == steps_[i].id);
                             }),
              all.end());
    return all;
  }

  void rings() {
    enum class Mark { fresh, open, closed };
    std::vector<Mark> mark(steps_.size(), Mark::fresh);
    struct At {
      std::size_t step;
      std::vector<std::size_t> before;
      std::size_t next = 0;
    };
    for (std::size_t start = 0; start < steps_.size(); ++start) {
      if (mark[start] != Mark::fresh) continue;
      mark[start] = Mark::open;
      std::vector<At> path{{start, before(start), 0}};
      while (!path.empty()) {
        At& at = path.back();
        if (at.next == at.before.size()) {
          mark[at.step] = Mark::closed;
          path.pop_back();
          continue;
        }
        const std::size_t to = at.before[at.next++];
        if (mark[to] == Mark::fresh) {
          mark[to] = Mark::open;
          path.push_back({to, before(to), 0});
        } else if (mark[to] == Mark::open) {
          std::string sentence;
          bool inside = false;
          for (const At& a : path) {
            inside = inside || a.step == to;
            if (inside) sentence += steps_[a.step].id + " waits for ";
          }
          diag_.error("steps-ring", steps_[to].at, sentence + steps_[to].id + ".", "drop one `after`");
        }
      }
    }
  }

  const std::vector<Step>& steps_;
  Diagnostics& diag_;
  std::map<std::string, std::size_t> index_;
};

}  // namespace

void check_step_library(const Templates& all, Diagnostics& diag) { Library(all, diag).check(); }

}  // namespace gownsheaf
