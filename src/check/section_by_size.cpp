// What a piece gives by size: of its lengths, its edges and its number, those of the size that is made, or between two.
#include <algorithm>

#include "check/sections.h"
#include "project/sizes.h"

namespace gownsheaf {

namespace {

bool gives(const Item& item, std::string_view direction) {
  return item.has("finished " + std::string(direction)) || item.has("cut " + std::string(direction));
}

// A length as one size gives it; `quantity` as SizedPiece has it.
struct OneLength {
  std::string quantity;
  Length value;
  SourceSpan at;
};

// One quantity of one piece, looked up in the sizes that are made.
class BySize {
 public:
  BySize(const Filling& file, const Item& item, std::string piece, Project& project)
      : file_(file), item_(item), piece_(std::move(piece)), project_(project), choice_(*project.size_choice),
        sizes_(sizes_of_piece(item)) {}

  // `what`: "length of bodice front"; `to_write`: what one size wants under its label. Writes says whether a size gives
  // it, Of reads it (nothing where it does not read, which was told already).
  template <class Writes, class Of>
  std::optional<OneLength> length(const std::string& what, const std::string& to_write, Writes writes, Of of) {
    const auto stands = which(what, to_write, writes);
    if (!stands) return {};
    const auto low = of(*stands->low);
    if (!low || stands->high == nullptr) return low ? std::optional(settled(*low, low->value, low->value)) : std::nullopt;
    const auto high = of(*stands->high);
    if (!high) return low;
    if (low->quantity != high->quantity) {
      not_between("The " + what + " is " + first_word(low->quantity) + " for " + choice_.made + " and " +
                      first_word(high->quantity) + " for " + choice_.between_to + ": it cannot be taken between them. That of " +
                      choice_.between_to + " stands.",
                  "`" + std::max(low->quantity, high->quantity) + "` for both, or `" + std::min(low->quantity, high->quantity) +
                      "` for both",
                  high->at, {low->at});
      return settled(*high, high->value, high->value);
    }
    OneLength made = *low;
    made.value = between_rows(low->value, high->value, choice_.between);
    return settled(made, low->value, high->value);
  }

  std::optional<Given<Make>> number() {
    const std::string what = "number of " + piece_;
    const auto stands = which(what, "make: …", [](const Item& size) { return size.has("make"); });
    if (!stands) return {};
    Given<Make> made = make_of(file_, *stands->low);
    if (stands->high != nullptr) {
      const Given<Make> high = make_of(file_, *stands->high);
      if (made.known() && high.known() && pieces(*made) != pieces(*high)) {
        not_between("The " + what + " is " + said(*stands->low) + " for " + choice_.made + " and " + said(*stands->high) +
                        " for " + choice_.between_to + ": none lies between them. That of " + choice_.between_to + " stands.",
                    "the same `make` for both, or `size: " + choice_.made + "`", high.at, {made.at});
        made = high;
      }
    }
    if (made.known()) project_.sized_pieces.push_back({piece_, "number made", {}, {}, {}, made.at, pieces(*made)});
    return made;
  }

 private:
  struct Stands {
    const Item* low = nullptr;
    const Item* high = nullptr;
  };  // high only where both sizes give it

  static std::int64_t pieces(const Make& make) { return make.number * (make.kind == Make::Kind::pairs ? 2 : 1); }
  static std::string said(const Item& size) { return size.plain("make"); }
  static std::string first_word(const std::string& quantity) { return quantity.substr(0, quantity.find(' ')); }

  OneLength settled(const OneLength& made, Length low, Length high) {
    project_.sized_pieces.push_back({piece_, made.quantity, low, high, made.value, made.at, {}});
    return made;
  }

  void not_between(std::string sentence, std::string hint, const SourceSpan& at, std::vector<SourceSpan> also = {}) {
    report(file_, {"pieces", piece_}, Severity::hold, "size-not-between", at, std::move(sentence), std::move(hint),
           std::move(also));
  }

  template <class Writes>
  std::optional<Stands> which(const std::string& what, const std::string& to_write, Writes writes) {
    std::vector<std::string> given;
    const Item *low = nullptr, *high = nullptr;
    for (const OfOneSize& s : sizes_) {
      if (!writes(s.item)) continue;
      given.push_back(s.label);
      if (folded_name(s.label) == folded_name(choice_.made)) low = &s.item;
      if (!choice_.between_to.empty() && folded_name(s.label) == folded_name(choice_.between_to)) high = &s.item;
    }
    const SourceSpan at = item_.at("by size")->key_at;
    const auto missing = [&](const std::string& label, const std::string& rest) {
      return "The " + what + " is given for " + listed(given) + ", not for " + label + rest;
    };
    if (low == nullptr && high == nullptr) {
      const bool between = !choice_.between_to.empty();
      report(file_, {"pieces", piece_}, Severity::error, "size-not-given", at,
             between ? missing(choice_.made + " nor " + choice_.between_to, ", between which it is made.")
                     : missing(choice_.made, ", which is made."),
             between ? "both sizes under its `by size`" : "`" + choice_.made + ": { " + to_write + " }` under its `by size`");
      return {};
    }
    if (!choice_.between_to.empty() && (low == nullptr || high == nullptr)) {
      not_between(missing(low == nullptr ? choice_.made : choice_.between_to,
                          ": it cannot be taken between them. That of " + (low == nullptr ? choice_.between_to : choice_.made) +
                              " stands."),
                  "both sizes under its `by size`", at);
      return Stands{low != nullptr ? low : high, nullptr};
    }
    return Stands{low, high};
  }

  const Filling& file_;
  const Item& item_;
  std::string piece_;
  Project& project_;
  const SizeChoice& choice_;
  std::vector<OfOneSize> sizes_;
};

}  // namespace

std::vector<OfOneSize> sizes_of_piece(const Item& item) {
  std::vector<OfOneSize> sizes;
  const Item by_size = item.block("by size");
  if (by_size.entry() != nullptr)
    for (const Entry& e : by_size.entry()->children)
      if (e.kind == Entry::Kind::block) sizes.push_back({clean_name(e.key), Item(&e, "pieces/*/by size/*")});
  return sizes;
}

bool given_by_size(const Item& item, std::string_view direction) {
  const std::vector<OfOneSize> sizes = sizes_of_piece(item);
  return std::any_of(sizes.begin(), sizes.end(), [&](const OfOneSize& s) { return gives(s.item, direction); });
}

Size size_made(const Filling& file, const Item& item, const std::string& piece, std::string_view direction, Project& project) {
  const Size own = own_size(item, direction);
  if (!given_by_size(item, direction) || !project.size_choice) return own;
  const std::string d(direction);
  const auto of = [&](const Item& size) -> std::optional<OneLength> {
    const Size read = own_size(size, direction);
    if (read.kind != Size::Kind::finished && read.kind != Size::Kind::cut) return {};
    return OneLength{(read.kind == Size::Kind::finished ? "finished " : "cut ") + d, read.value, read.at};
  };
  const auto made =
      BySize(file, item, piece, project)
          .length(
              d + " of " + piece, "finished " + d + ": …", [&](const Item& size) { return gives(size, direction); }, of);
  Size size;
  if (!made) return size;
  size.kind = made->quantity.starts_with("cut") ? Size::Kind::cut : Size::Kind::finished;
  size.value = made->value;
  size.at = made->at;
  return size;
}

Given<Make> make_made(const Filling& file, const Item& item, const std::string& piece, Project& project) {
  const std::vector<OfOneSize> sizes = sizes_of_piece(item);
  const bool by_size = std::any_of(sizes.begin(), sizes.end(), [](const OfOneSize& s) { return s.item.has("make"); });
  if (!by_size || !project.size_choice) return make_of(file, item);
  return BySize(file, item, piece, project).number().value_or(Given<Make>{});
}

void edges_made(const Filling& file, const Item& item, Piece& piece, Project& project) {
  const auto edges_of = [](const Item& size) {
    std::map<std::string, Given<Length>> edges;
    fill_edges(size, "edges", edges);
    return edges;
  };
  std::vector<std::string> names;  // as first written
  for (const OfOneSize& size : sizes_of_piece(item))
    for (const auto& [name, length] : edges_of(size.item))
      if (std::none_of(names.begin(), names.end(),
                       [&, &now = name](const std::string& n) { return folded_name(n) == folded_name(now); }))
        names.push_back(name);
  if (names.empty() || !project.size_choice) return;
  const auto edge_in = [](const Item& size, const std::string& name) -> const Entry* {
    const Entry* edges = size.block("edges").entry();
    if (edges == nullptr) return nullptr;
    const auto e = std::find_if(edges->children.begin(), edges->children.end(),
                                [&](const Entry& c) { return folded_name(clean_name(c.key)) == folded_name(name); });
    return e == edges->children.end() ? nullptr : &*e;
  };
  for (const std::string& name : names) {
    const auto of = [&](const Item& size) -> std::optional<OneLength> {
      for (const auto& [edge, length] : edges_of(size))
        if (folded_name(edge) == folded_name(name) && length.known()) return OneLength{"length of " + name, *length, length.at};
      return {};
    };
    const auto made = BySize(file, item, piece.named.name, project)
                          .length(
                              "length of " + name + " of " + piece.named.name, "edges: { " + name + ": … }",
                              [&](const Item& size) { return edge_in(size, name) != nullptr; }, of);
    std::erase_if(piece.edges, [&](const auto& own) { return folded_name(own.first) == folded_name(name); });
    if (made) piece.edges[name] = Given<Length>::written(made->value, made->at);
  }
}

}  // namespace gownsheaf
