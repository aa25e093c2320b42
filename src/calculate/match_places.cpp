#include "calculate/match_places.h"

#include <algorithm>
#include <optional>

namespace gownsheaf {
namespace {

constexpr Length kMeets = Length::mm(2);  // nearer than a hand pins it

struct Mark {
  std::string name;
  Point at;
  int side = 0;
};  // side: -1 at the near edge of its piece, 1 at the far, 0 between
struct Matched {
  const Piece* piece = nullptr;
  std::vector<Mark> marks;
  Length across;
  bool on_fold = false;
};

Matched matched(const Piece& piece) {
  Matched out{&piece, {}, {}, piece.on_fold.known() && *piece.on_fold};
  const bool turned = piece.grain.known() && *piece.grain == Grain::across;
  const Box cut = bounds(piece.drawn->cut);
  out.across = turned ? cut.width : cut.height;
  for (const DrawnPiece::Line& line : piece.drawn->lines) {
    if (line.kind != "match") continue;
    const Box box = bounds(line.points);
    Point at{box.x + box.width.times(1, 2), box.y + box.height.times(1, 2)};
    if (turned) at = {cut.height - at.y, at.x};
    const Length quarter = out.across.times(1, 4);
    out.marks.push_back({line.name, at, at.y < quarter ? -1 : at.y > out.across - quarter ? 1 : 0});
  }
  return out;
}

// The place of a mark as seen from the side that its name was first met at.
struct Known {
  Point place;
  int side = 0;
};

class Chain {
 public:
  Chain(const Project& project, const Cloth& cloth) : repeat_(laid_repeat(*cloth.repeat)) {
    for (const Piece& piece : project.pieces) {
      if (piece.match_at.empty() || !piece.drawn) continue;
      if (std::none_of(piece.from.begin(), piece.from.end(),
                       [&](const std::string& name) { return same_name(name, cloth.named.name); }))
        continue;
      Matched one = matched(piece);
      if (!one.marks.empty()) pieces_.push_back(std::move(one));
    }
  }

  MatchPlaces made() {
    std::vector<bool> done(pieces_.size(), false);
    for (std::size_t n = 0; n < pieces_.size(); ++n) {
      const std::size_t next = next_of(done);
      done[next] = true;
      lay(pieces_[next]);
    }
    return std::move(out_);
  }

 private:
  bool shared(const std::string& name) const {
    const auto has = [&](const Matched& m) {
      return std::any_of(m.marks.begin(), m.marks.end(), [&](const Mark& k) { return k.name == name; });
    };
    return !name.empty() && std::count_if(pieces_.begin(), pieces_.end(), has) > 1;
  }

  const Mark* known_mark(const Matched& m) const {
    for (const Mark& mark : m.marks)
      if (known_.count(mark.name) != 0) return &mark;
    return nullptr;
  }

  // One that meets a neighbour already laid; else one on the fold that has neighbours; else the first as written.
  std::size_t next_of(const std::vector<bool>& done) const {
    const std::size_t none = pieces_.size();
    std::size_t on_fold = none, first = none;
    for (std::size_t i = pieces_.size(); i-- > 0;) {
      if (done[i]) continue;
      first = i;
      const Matched& m = pieces_[i];
      if (m.on_fold && std::any_of(m.marks.begin(), m.marks.end(), [&](const Mark& k) { return shared(k.name); })) on_fold = i;
    }
    for (std::size_t i = 0; i < pieces_.size(); ++i)
      if (!done[i] && known_mark(pieces_[i]) != nullptr) return i;
    return on_fold != none ? on_fold : first;
  }

  Point seen_from(const Known& known, const Mark& mark) const {
    const bool mirrored = known.side != 0 && known.side == mark.side;
    return {known.place.x, mirrored ? -known.place.y : known.place.y};
  }

  void lay(const Matched& m) {
    const Mark& first = m.marks.front();
    Point line = first.at;  // lies on the lines
    const Mark* met = known_mark(m);
    if (met != nullptr) {
      const Point place = seen_from(known_.at(met->name), *met);
      line = {met->at.x - place.x, met->at.y - place.y};
    }
    const bool any_shared = std::any_of(m.marks.begin(), m.marks.end(), [&](const Mark& k) { return shared(k.name); });
    if (m.on_fold && any_shared) {
      const Length middle = m.across.times(1, 2);
      line.y = middle;
    }
    for (const Mark& mark : m.marks) {
      if (!shared(mark.name)) {
        tell(m, mark, {mark.at.x - line.x, mark.at.y - line.y});
        continue;
      }
      const Point place{mark.at.x - line.x, mark.at.y - line.y};
      const auto known = known_.find(mark.name);
      if (known == known_.end()) {
        known_[mark.name] = {place, mark.side};
      } else {
        const Point there = seen_from(known->second, mark);
        tell(m, mark, {place.x - there.x, place.y - there.y});
      }
    }
    out_.on_lines[m.piece->named.name] = line;
  }

  void tell(const Matched& m, const Mark& mark, Point off) {
    const Length along = off_repeat(off.x, repeat_.along), across = off_repeat(off.y, repeat_.across);
    if (along > kMeets || across > kMeets) out_.clashes.push_back({m.piece->named.name, mark.name, along, across});
  }

  Repeat repeat_;
  std::vector<Matched> pieces_;
  std::map<std::string, Known> known_;
  MatchPlaces out_;
};

}  // namespace

MatchPlaces match_places(const Project& project, const Cloth& cloth) {
  if (!cloth.repeat) return {};
  return Chain(project, cloth).made();
}

Repeat laid_repeat(const Repeat& repeat) {
  Repeat laid = repeat;
  if (laid.across && laid.half_drop) laid.across = *laid.across * 2;
  return laid;
}

Length within_repeat(Length at, Length size, const std::optional<Length>& repeat) {
  if (!repeat) return at;
  Length least = at - at.to_step(*repeat, Rounding::down);
  if (least < Length{}) least += *repeat;
  return at >= Length{} && at <= size ? at : least;
}

Length off_repeat(Length apart, const std::optional<Length>& repeat) {
  if (!repeat) return {};
  if (apart < Length{}) apart = Length{} - apart;
  const Length past = apart - apart.to_step(*repeat, Rounding::down);
  return std::min(past, *repeat - past);
}

}  // namespace gownsheaf
