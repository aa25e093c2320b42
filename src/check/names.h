// Names in the file: composed letters (NFC), runs of space made one, case kept for print and ignored in matching.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "check/key_spec.h"
#include "read/entry.h"
#include "templates/templates.h"

namespace gownsheaf {

std::string clean_name(std::string_view written);   // NFC, outer spaces off, inner runs made one
std::string folded_name(std::string_view written);  // of a clean name: case folded, for matching only
// Position in characters and the sign that no name may hold (`/ @ + # : , [ ] { }` and control characters), or nothing.
struct ForbiddenSign {
  int at = 0;
  std::string sign;
};
std::optional<ForbiddenSign> forbidden_sign(std::string_view written);
inline constexpr int kLongestName = 60;

struct KnownName {
  std::string name;  // clean
  std::string folded;
  SourceSpan at;
};

// Every name that other places of the file may look up, gathered before anything is checked, so that a fault in a
// cloth does not make all its pieces nameless.
class KnownNames {
 public:
  KnownNames(const Entry& root, const Templates& templates);

  // The name as first written, or nothing. `sections` as in KeySpec::refers_to: "cloths", "cloths|notions", "measures".
  std::optional<std::string> find(std::string_view sections, std::string_view written) const;
  std::vector<std::string> all(std::string_view sections) const;  // in the file's order
  // Edges that pieces declare under `edges`, of their own or by size: folded piece name -> clean edge names.
  const std::map<std::string, std::vector<std::string>>& piece_edges() const { return piece_edges_; }
  bool knows_steps() const { return knows_steps_; }

 private:
  void add_edges(const Entry& piece, const std::string& folded_piece);

  std::map<std::string, std::vector<KnownName>, std::less<>> sections_;
  std::map<std::string, std::vector<std::string>> piece_edges_;
  bool knows_steps_ = false;
};

// First key of a list's items, when it gives each a name of its own; "" else.
std::string_view naming_key(std::string_view list_path);
std::vector<std::string> parted(std::string_view text, char at);  // "a|b" -> a, b

}  // namespace gownsheaf
