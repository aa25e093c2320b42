#include "check/names.h"

#include <algorithm>

#include "unicode/forms.h"
#include "unicode/utf8.h"

namespace gownsheaf {

namespace {

KnownName known(std::string_view written, const SourceSpan& at) {
  std::string clean = clean_name(written);
  std::string folded = folded_name(clean);
  return {std::move(clean), std::move(folded), at};
}

}  // namespace

std::vector<std::string> parted(std::string_view text, char at) {
  std::vector<std::string> parts;
  while (!text.empty()) {
    const auto cut = text.find(at);
    parts.emplace_back(text.substr(0, cut));
    if (cut == std::string_view::npos) break;
    text.remove_prefix(cut + 1);
  }
  return parts;
}

std::string clean_name(std::string_view written) {
  const std::string composed = composed_form(written);
  std::string made;
  for (std::size_t i = 0; i < composed.size(); ++i) {
    // A no-break space (C2 A0) is a space like any other.
    const bool wide = composed.compare(i, 2, "\xC2\xA0") == 0;
    if (wide) ++i;
    if (!wide && composed[i] != ' ' && composed[i] != '\t' && composed[i] != '\n') {
      made += composed[i];
    } else if (!made.empty() && made.back() != ' ') {
      made += ' ';
    }
  }
  if (!made.empty() && made.back() == ' ') made.pop_back();
  return made;
}

std::string folded_name(std::string_view written) { return case_folded(written); }

std::optional<ForbiddenSign> forbidden_sign(std::string_view written) {
  constexpr std::string_view kForbidden = "/@+#:,[]{}";
  int at = 0;
  for (const char c : written) {
    if (kForbidden.find(c) != std::string_view::npos) return ForbiddenSign{at, std::string(1, c)};
    if (static_cast<unsigned char>(c) < 0x20 && c != '\t' && c != '\n') return ForbiddenSign{at, "a control character"};
    if (begins_character(c)) ++at;
  }
  return {};
}

std::string_view naming_key(std::string_view list_path) {
  const auto& keys = keys_below(std::string(list_path) + "/*");
  if (keys.empty() || keys.front()->kind != KeyKind::name || !keys.front()->refers_to.empty()) return {};
  return keys.front()->path.substr(keys.front()->path.rfind('/') + 1);
}

KnownNames::KnownNames(const Entry& root, const Templates& templates) {
  for (const Entry& section : root.children) {
    const KeySpec* spec = find_key(section.key);
    if (spec == nullptr || section.key.find('/') != std::string::npos) continue;
    std::vector<KnownName>& names = sections_[section.key];
    if (spec->kind == KeyKind::map && section.kind == Entry::Kind::block) {
      for (const Entry& item : section.children) names.push_back(known(item.key, item.key_at));
    } else if (spec->kind == KeyKind::list) {
      const std::string_view key = naming_key(section.key);
      const auto add = [&](const Entry& item) {
        const Entry* name = key.empty() ? nullptr : item.find(key);
        if (name == nullptr || name->kind != Entry::Kind::text) return;
        names.push_back(known(name->text, name->at));
        if (section.key == "pieces") add_edges(item, names.back().folded);
      };
      if (section.kind == Entry::Kind::block) add(section);
      for (const Entry& item : section.children)
        if (section.kind == Entry::Kind::list) add(item);
    }
  }
  std::vector<KnownName>& measures = sections_["measures"];
  for (const KeySpec* spec : keys_below("measures"))
    if (spec->kind == KeyKind::length) measures.push_back(known(spec->path.substr(9), {}));
  const Entry* body = root.find("measures");
  if (const Entry* other = body == nullptr ? nullptr : body->find("other"))
    for (const Entry& m : other->children) measures.push_back(known(m.key, m.key_at));

  std::vector<KnownName>& steps = sections_["steps"];
  for (const Step& step : templates.steps) steps.push_back(known(step.id, step.at));
  knows_steps_ = !templates.steps.empty();
  const Entry* work = root.find("work");
  const Entry* own = work == nullptr ? nullptr : work->find("own steps");
  if (own != nullptr && own->kind == Entry::Kind::list)
    for (const Entry& step : own->children)
      if (const Entry* name = step.find("step")) steps.push_back(known(name->text, name->at));
}

void KnownNames::add_edges(const Entry& piece, const std::string& folded_piece) {
  std::vector<std::string>& known = piece_edges_[folded_piece];
  const auto add = [&](const Entry& of) {
    const Entry* edges = of.find("edges");
    if (edges == nullptr) return;
    for (const Entry& edge : edges->children) {
      std::string name = clean_name(edge.key);
      const auto same = [&](const std::string& k) { return folded_name(k) == folded_name(name); };
      if (std::none_of(known.begin(), known.end(), same)) known.push_back(std::move(name));
    }
  };
  add(piece);
  if (const Entry* sizes = piece.find("by size"))
    for (const Entry& size : sizes->children) add(size);
  if (known.empty()) piece_edges_.erase(folded_piece);
}

std::optional<std::string> KnownNames::find(std::string_view sections, std::string_view written) const {
  const std::string wanted = folded_name(clean_name(written));
  for (const std::string& section : parted(sections, '|')) {
    const auto it = sections_.find(section);
    if (it == sections_.end()) continue;
    for (const KnownName& name : it->second)
      if (name.folded == wanted) return name.name;
  }
  return {};
}

std::vector<std::string> KnownNames::all(std::string_view sections) const {
  std::vector<std::string> names;
  for (const std::string& section : parted(sections, '|'))
    if (const auto it = sections_.find(section); it != sections_.end())
      for (const KnownName& name : it->second) names.push_back(name.name);
  return names;
}

}  // namespace gownsheaf
