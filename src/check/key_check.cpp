// The walk: blocks, lists and maps. Single values are in key_check_values.cpp.
#include "check/key_check.h"

#include <algorithm>

#include "diagnostics/message.h"
#include "units/print.h"

namespace gownsheaf {

namespace {

bool all_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// Nouns of the places where this key is a word: items first, then blocks. Places inside other items, and such as are
// not worked out yet, only where there is no nearer one.
std::vector<std::string> places_of(std::string_view key) {
  std::vector<std::string> items, blocks, further;
  for (const KeySpec& spec : key_specs()) {
    if (last_part(spec.path) != key) continue;
    const auto cut = spec.path.rfind('/');
    const std::string_view up = cut == std::string_view::npos ? std::string_view{} : spec.path.substr(0, cut);
    const bool item = up.ends_with("/*");
    const bool near = (item ? up.substr(0, up.size() - 2) : up).find('/') == std::string_view::npos && spec.first_needed == 1;
    std::vector<std::string>& nouns = near ? (item ? items : blocks) : further;
    const std::string noun = up.empty() ? "the top level" : noun_of(up);
    if (std::find(nouns.begin(), nouns.end(), noun) == nouns.end()) nouns.push_back(noun);
  }
  items.insert(items.end(), blocks.begin(), blocks.end());
  return items.empty() ? further : items;
}

std::string move_to(const std::string& place) {
  if (place == "the top level") return "move it out to the top level";
  if (place.starts_with("`")) return "move it under " + place;
  return "move it to the " + place.substr(place.find(' ') + 1) + " that it is about";
}

}  // namespace

void KeyCheck::report(std::string code, Severity severity, const SourceSpan& at, std::string sentence, std::string hint,
                      std::vector<SourceSpan> also) {
  Diagnostic d = message({item_, section_, "", private_}, severity, std::move(code), at, std::move(sentence), std::move(hint));
  d.also = std::move(also);
  diag_.add(std::move(d));
}

void KeyCheck::whole_file(const Entry& root) {
  if (root.kind != Entry::Kind::block) return;
  block(root, {});
}

void KeyCheck::block(const Entry& entry, const Spot& spot) {
  keys_of_block(entry, spot);
  required_keys(entry, spot);
}

void KeyCheck::keys_of_block(const Entry& entry, const Spot& spot) {
  const std::string base = spot.path.empty() ? "" : spot.path + "/";
  const bool top = spot.path.empty();
  for (const Entry& child : entry.children) {
    const bool was_private = private_;
    if (top) section_ = child.key, item_.clear();
    const KeySpec* spec = child.key.find_first_of("/*") == std::string::npos ? find_key(base + child.key) : nullptr;
    if (spec == nullptr && !top) {
      // A block that also takes names of the maker's own (`pace`).
      spec = find_key(base + "*");
      if (spec != nullptr) map_name(child, *spec);
    }
    if (spec == nullptr) {
      if (top) section_.clear();
      unknown_key(child, spot);
    } else {
      private_ = private_ || spec->is_private;
      Spot below{std::string(spec->path), (spot.shown.empty() ? "" : spot.shown + "/") + child.key, spot.noted};
      if (!below.noted && spec->first_needed > 1) {
        const std::string of = spot.path.ends_with("/*") ? " of " + noun_of(spot.path) : "";
        not_worked_out(*spec, child.key_at, ticked(child.key) + of + " is read but not worked out yet.");
        below.noted = true;
      }
      value(child, *spec, child.key, below);
    }
    private_ = was_private;
    if (top) section_.clear(), item_.clear();
  }
}

void KeyCheck::not_worked_out(const KeySpec& spec, const SourceSpan& at, const std::string& sentence) {
  if (noted_.insert(std::string(spec.path)).second) report("not-worked-out-yet", Severity::note, at, sentence);
}

void KeyCheck::unknown_key(const Entry& child, const Spot& spot) {
  if (spot.path == "pieces/*" && (child.key == "width" || child.key == "length")) {
    report("cut-or-finished", Severity::error, child.key_at,
           "is " + ticked(child.key) + " on " + (item_.empty() ? "this piece" : item_) + " cut or finished?",
           "stitch line to stitch line is " + ticked("finished " + child.key) + "; where the scissors go is " +
               ticked("cut " + child.key));
    return;
  }
  const std::vector<std::string> keys = key_names(spot.path);
  const std::string folded = folded_name(clean_name(child.key));
  const auto plain = std::find(keys.begin(), keys.end(), folded);
  const std::vector<std::string> places = places_of(child.key);
  const std::string here = noun_of(spot.path);
  if (plain == keys.end() && !places.empty()) {
    report("wrong-place", Severity::error, child.key_at,
           ticked(child.key) + " is for " + listed(places, "or", 4) + ", not for " +
               (spot.path.empty() ? "the top level" : here) + ".",
           move_to(places.front()));
    return;
  }
  const std::string meant = plain != keys.end() ? *plain : did_you_mean(child.key, keys);
  report("unknown-key", Severity::error, child.key_at, ticked(child.key) + " is no word for " + here + ".",
         meant.empty() ? "its words are " + listed(keys, "and", 10) : "did you mean " + ticked(meant) + "?");
}

void KeyCheck::required_keys(const Entry& entry, const Spot& spot) {
  const SourceSpan at = entry.key_at.line > 0 && !spot.path.empty() ? entry.key_at : entry.at;
  const KeySpec* list = spot.path.ends_with("/*") ? find_key(spot.path.substr(0, spot.path.size() - 2)) : nullptr;
  std::string who = noun_of(spot.path);
  if (spot.path.empty()) who = "The file";
  else if (list != nullptr && !list->one.empty()) {
    const std::string_view key = naming_key(list->path);
    const Entry* name = key.empty() ? nullptr : entry.find(key);
    const std::string called = name != nullptr ? clean_name(name->text) : list->kind == KeyKind::map ? clean_name(entry.key) : "";
    who = called.empty() ? "This " + std::string(list->one) : std::string(list->one) + " " + called;
    who = sentence_case(who);
  }
  struct Group {
    std::string_view name;
    std::vector<const KeySpec*> all, given;
    bool misspelt = false;
  };
  std::vector<Group> groups;
  for (const KeySpec* spec : keys_below(spot.path)) {
    const std::string key(last_part(spec->path));
    if (!spec->required && spec->group.empty()) continue;
    const bool given = entry.find(key) != nullptr || is_misspelt_in(entry, spot.path, key);  // the latter was told already
    if (spec->required && !given)
      report("key-missing", Severity::error, at, who + " has no " + ticked(key) + ".", how_to_write(*spec, key));
    if (spec->group.empty()) continue;
    auto group = std::find_if(groups.begin(), groups.end(), [&](const Group& g) { return g.name == spec->group; });
    if (group == groups.end()) group = groups.insert(groups.end(), Group{spec->group, {}, {}, false});
    group->all.push_back(spec);
    if (given && entry.find(key) != nullptr) group->given.push_back(spec);
    group->misspelt = group->misspelt || (given && entry.find(key) == nullptr);
  }
  for (const Group& group : groups) {
    std::vector<std::string> names;
    for (const KeySpec* spec : group.given.size() > 1 ? group.given : group.all) names.push_back(ticked(last_part(spec->path)));
    if (group.given.empty() && !group.misspelt && group.name[0] != '?') {
      std::string hint;
      for (const KeySpec* spec : group.all)  // the first that can be typed as it stands
        if (hint.empty() || hint.find("…") != std::string::npos) hint = how_to_write(*spec, std::string(last_part(spec->path)));
      report("key-missing", Severity::error, at, who + " needs " + listed(names, "or") + ".", hint);
    }
    if (group.given.size() > 1 && group.name[0] != '+') {
      const Entry* second = entry.find(last_part(group.given[1]->path));
      const Entry* first = entry.find(last_part(group.given[0]->path));
      if (std::tie(first->key_at.line, first->key_at.column) > std::tie(second->key_at.line, second->key_at.column))
        std::swap(first, second);
      report("said-twice", Severity::error, second->key_at, who + " has both " + listed(names) + ".", "keep one of them",
             {first->key_at});
    }
  }
}

void KeyCheck::value(const Entry& entry, const KeySpec& spec, std::string_view key, const Spot& spot) {
  if (entry.kind == Entry::Kind::nothing) return no_value(entry, spec, key);
  if (entry.kind == Entry::Kind::text && entry.text == kNone && may_be_none(spec)) return;
  switch (spec.kind) {
    case KeyKind::any_of_these:
      if (spec.words.empty()) return;  // whole sections of a view
      return list(entry, spec, key, spot);
    case KeyKind::list: return list(entry, spec, key, spot);
    case KeyKind::map:
      if (entry.kind == Entry::Kind::block) return map(entry, spec, spot);
      if (entry.kind == Entry::Kind::list && !spec.one.empty())
        report("map-wanted", Severity::error, entry.key_at,
               ticked(key) + " is a list here; each " + std::string(spec.one) + " stands under its own name.",
               "drop the dash: `" + name_in_list(entry) + ": " + (spec.each == KeyKind::block ? "{ … }" : "…") + "`");
      else
        report("map-wanted", Severity::error, entry.at, ticked(key) + " wants names, each with its own value.",
               ticked(std::string(key) + ": { NAME: … }"));
      return;
    case KeyKind::block:
      if (entry.kind == Entry::Kind::block) return block(entry, spot);
      return not_a_block(entry, spec, key);
    default: break;
  }
  if (entry.kind == Entry::Kind::block && !keys_below(spec.path).empty()) {
    // Its second form. Where all of that form comes later, one note says so.
    const auto& below = keys_below(spec.path);
    Spot inside = spot;
    if (!spot.noted && std::all_of(below.begin(), below.end(), [](const KeySpec* k) { return k->first_needed > 1; })) {
      not_worked_out(spec, entry.key_at, ticked(key) + " written as a block is read but not worked out yet.");
      inside.noted = true;
    }
    return block(entry, inside);
  }
  if (entry.kind != Entry::Kind::text) {
    const bool one = !entry.children.empty() && entry.children.front().kind == Entry::Kind::text;
    report("single-wanted", Severity::error, entry.at,
           ticked(key) + " is one value; " + (entry.kind == Entry::Kind::list ? "a list" : "a block") + " stands here.",
           one ? ticked(std::string(key) + ": " + entry.children.front().text) + (entry.children.size() > 1 ? ", say" : "")
               : "write one value after " + ticked(std::string(key) + ":"));
    return;
  }
  text(entry, spec, spec.kind, key, spot);
}

void KeyCheck::list(const Entry& entry, const KeySpec& spec, std::string_view key, const Spot& spot) {
  const std::string_view naming = spec.kind == KeyKind::list ? naming_key(spec.path) : std::string_view{};
  const bool top = spot.path == section_;
  const auto under = [&](const Entry& item) {
    Spot below{spot.path + "/*", spot.shown, spot.noted};
    const Entry* name = naming.empty() ? nullptr : item.find(naming);
    if (name != nullptr) below.shown += "/" + clean_name(name->text);
    if (top) item_ = name != nullptr ? clean_name(name->text) : "";
    if (top && item_.empty() && item.kind == Entry::Kind::block && !item.children.empty())
      item_ = clean_name(item.children.front().text);
    one_item(item, spec, key, below);
    if (top) item_.clear();
  };
  if (entry.kind != Entry::Kind::list) {
    if (entry.kind == Entry::Kind::block && spec.each == KeyKind::block) {
      const auto& keys = keys_below(std::string(spec.path) + "/*");
      if (!keys.empty() && entry.find(last_part(keys.front()->path)) == nullptr) {
        report("list-wanted", Severity::error, entry.key_at,
               ticked(key) + " is a list; each " + std::string(spec.one) + " begins with a dash.",
               "`- { " + std::string(last_part(keys.front()->path)) + ": " + name_in_block(entry) + ", … }`");
        return;
      }
    }
    return under(entry);
  }
  // Decimal comma: `[2,5 m]` comes as two items that touch the comma.
  for (std::size_t i = 0; i < entry.children.size(); ++i) {
    const Entry& item = entry.children[i];
    if (i + 1 < entry.children.size() && is_quantity(spec.each) && item.kind == Entry::Kind::text && all_digits(item.text)) {
      const Entry& next = entry.children[i + 1];
      if (next.kind == Entry::Kind::text && next.at.line == item.at.line &&
          next.at.column == item.at.column + static_cast<int>(item.text.size()) + 1) {
        report("decimal-comma", Severity::error, item.at, ticked(item.text + "," + next.text) + ": a comma parts two items.",
               ticked(item.text + "." + next.text));
        ++i;
        continue;
      }
    }
    under(item);
  }
  if (naming.empty()) return;
  std::vector<std::pair<std::string, SourceSpan>> named;
  for (const Entry& item : entry.children)
    if (const Entry* name = item.find(naming); name != nullptr && name->kind == Entry::Kind::text)
      named.emplace_back(clean_name(name->text), name->at);
  said_twice(named, spec.one);
}

void KeyCheck::one_item(const Entry& item, const KeySpec& spec, std::string_view key, const Spot& spot) {
  if (item.kind == Entry::Kind::nothing) {
    report("value-empty", Severity::error, item.at, "An item of " + ticked(key) + " is empty.", "write it, or take the line out");
    return;
  }
  const KeyKind kind = spec.kind == KeyKind::any_of_these ? KeyKind::word : spec.each;
  if (kind == KeyKind::block && spec.kind == KeyKind::list && is_of_another_list(item, spec)) return;
  if (item.kind == Entry::Kind::block && (kind == KeyKind::block || !keys_below(spot.path).empty())) return block(item, spot);
  if (kind == KeyKind::block) {
    report("map-wanted", Severity::error, item.at,
           sentence_case(with_article(spec.one)) + " in " + ticked(key) + " holds words of its own, each with its value.",
           ticked(block_with(item, spot.path)));
    return;
  }
  if (item.kind != Entry::Kind::text) {
    report("single-wanted", Severity::error, item.at, "An item of " + ticked(key) + " is one value.", "write one value");
    return;
  }
  text(item, spec, kind, key, spot);
}

void KeyCheck::map(const Entry& entry, const KeySpec& spec, const Spot& spot) {
  const bool top = spot.path == section_;
  std::vector<std::pair<std::string, SourceSpan>> named;
  for (const Entry& item : entry.children) {
    if (top) item_ = clean_name(item.key);
    map_name(item, spec);
    named.emplace_back(clean_name(item.key), item.key_at);
    const Spot below{spot.path + "/*", spot.shown + "/" + clean_name(item.key), spot.noted};
    if (item.kind == Entry::Kind::nothing) no_value(item, spec, item.key);
    else if (spec.each == KeyKind::block && item.kind == Entry::Kind::text)
      report("map-wanted", Severity::error, item.at,
             sentence_case(std::string(spec.one) + " " + clean_name(item.key)) + " holds words of its own, not one value.",
             "`" + item.key + ": " + block_with(item, below.path) + "`");
    else one_item(item, spec, item.key, below);
    if (top) item_.clear();
  }
  said_twice(named, spec.one.empty() ? "name" : spec.one);
}

void KeyCheck::said_twice(const std::vector<std::pair<std::string, SourceSpan>>& named, std::string_view one) {
  for (std::size_t i = 0; i < named.size(); ++i) {
    const std::string folded = folded_name(named[i].first);
    std::size_t first = 0;
    while (first < i && folded_name(named[first].first) != folded) ++first;
    if (first == i) continue;
    const auto line = [&](std::size_t k) { return whole_number(named[k].second.line); };
    report(
        "name-twice", Severity::error, named[i].second,
        "Two " + std::string(one) + "s are called " + ticked(named[i].first) + " (lines " + line(first) + ", " + line(i) + ").",
        "name them apart", {named[first].second});
  }
}

}  // namespace gownsheaf
