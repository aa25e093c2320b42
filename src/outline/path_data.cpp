#include "outline/path_data.h"

#include <algorithm>

#include "outline/numbers.h"

namespace gownsheaf {
namespace {

class PathReader {
 public:
  PathReader(std::string_view d, FlatPath& out) : scan_(d), out_(out) {}

  std::optional<PathFault> read() {
    scan_.skip_blanks();
    bool first = true;
    while (!scan_.done()) {
      const std::size_t here = scan_.at();
      const char command = scan_.take();
      const std::size_t arguments = count_of(command);
      if (arguments == kUnknown || (first && command != 'M' && command != 'm')) return PathFault{here};
      first = false;
      if (arguments == 0) {
        out_.close();
        last_ = 'Z';
        scan_.skip_blanks();
        continue;
      }
      if (const std::optional<PathFault> fault = repeats(command)) return fault;
    }
    return {};
  }

 private:
  static constexpr std::size_t kUnknown = 99;
  static std::size_t count_of(char c) {
    switch (c) {
      case 'Z':
      case 'z': return 0;
      case 'H':
      case 'h':
      case 'V':
      case 'v': return 1;
      case 'M':
      case 'm':
      case 'L':
      case 'l':
      case 'T':
      case 't': return 2;
      case 'S':
      case 's':
      case 'Q':
      case 'q': return 4;
      case 'C':
      case 'c': return 6;
      case 'A':
      case 'a': return 7;
      default: return kUnknown;
    }
  }

  // A command with its arguments, as often as they come.
  std::optional<PathFault> repeats(char command) {
    double v[7];
    scan_.skip_blanks();
    do {
      for (std::size_t i = 0; i < count_of(command); ++i) {
        const bool is_flag = (command == 'A' || command == 'a') && (i == 3 || i == 4);
        if (is_flag) {
          const std::optional<bool> flag = scan_.flag();
          if (!flag) return PathFault{scan_.at()};
          v[i] = *flag ? 1 : 0;
        } else {
          const std::optional<double> number = scan_.number();
          if (!number) return PathFault{scan_.at()};
          v[i] = *number;
        }
        scan_.skip_comma();
      }
      draw(command, v);
      if (command == 'M') command = 'L';  // what follows a move is drawn
      if (command == 'm') command = 'l';
    } while (scan_.begins_number());
    return {};
  }

  void draw(char command, const double* v) {
    const bool relative = command >= 'a';
    const char kind = relative ? static_cast<char>(command - 'a' + 'A') : command;
    const Spot at = out_.at(), from = relative ? at : Spot{};
    const auto spot = [&](int i) { return Spot{from.x + v[i], from.y + v[i + 1]}; };
    // The control point mirrored at the current one, when the command before had one of the same kind.
    const auto mirrored = [&](char like, char like_too) {
      return last_ == like || last_ == like_too ? Spot{2 * at.x - control_.x, 2 * at.y - control_.y} : at;
    };
    switch (kind) {
      case 'M': out_.move(spot(0)); break;
      case 'L': out_.line(spot(0)); break;
      case 'H': out_.line({from.x + v[0], at.y}); break;
      case 'V': out_.line({at.x, from.y + v[0]}); break;
      case 'C': control_ = spot(2), out_.cubic(spot(0), control_, spot(4)); break;
      case 'S': {
        const Spot first = mirrored('C', 'S');
        control_ = spot(0);
        out_.cubic(first, control_, spot(2));
        break;
      }
      case 'Q': control_ = spot(0), out_.quadratic(control_, spot(2)); break;
      case 'T': control_ = mirrored('Q', 'T'), out_.quadratic(control_, spot(0)); break;
      default: out_.arc(v[0], v[1], v[2], v[3] != 0, v[4] != 0, spot(5));
    }
    last_ = kind;
  }

  NumberScanner scan_;
  FlatPath& out_;
  char last_ = 'Z';
  Spot control_;
};

}  // namespace

std::optional<PathFault> read_path(std::string_view d, FlatPath& out) { return PathReader(d, out).read(); }

std::optional<PathFault> read_points(std::string_view points, bool closed, FlatPath& out, bool& odd) {
  NumberScanner scan(points);
  bool first = true;
  odd = false;
  for (scan.skip_blanks(); !scan.done();) {
    const std::optional<double> x = scan.number();
    if (!x) return PathFault{scan.at()};
    scan.skip_comma();
    if (scan.done()) {
      odd = true;
      break;
    }
    const std::optional<double> y = scan.number();
    if (!y) return PathFault{scan.at()};
    scan.skip_comma();
    if (first) out.move({*x, *y});
    else out.line({*x, *y});
    first = false;
  }
  if (closed) out.close();
  return {};
}

void add_ellipse(double cx, double cy, double rx, double ry, FlatPath& out) {
  if (!(rx > 0) || !(ry > 0)) return;
  out.move({cx + rx, cy});
  out.arc(rx, ry, 0, false, true, {cx, cy + ry});
  out.arc(rx, ry, 0, false, true, {cx - rx, cy});
  out.arc(rx, ry, 0, false, true, {cx, cy - ry});
  out.arc(rx, ry, 0, false, true, {cx + rx, cy});
  out.close();
}

void add_rectangle(double x, double y, double width, double height, double rx, double ry, FlatPath& out) {
  if (!(width > 0) || !(height > 0)) return;
  rx = std::clamp(rx, 0.0, width / 2);
  ry = std::clamp(ry, 0.0, height / 2);
  const bool round = rx > 0 && ry > 0;
  const double right = x + width, bottom = y + height;
  if (!round) rx = ry = 0;
  out.move({x + rx, y});
  const auto corner = [&](Spot to) {
    if (round) out.arc(rx, ry, 0, false, true, to);
  };
  out.line({right - rx, y});
  corner({right, y + ry});
  out.line({right, bottom - ry});
  corner({right - rx, bottom});
  out.line({x + rx, bottom});
  corner({x, bottom - ry});
  out.line({x, y + ry});
  corner({x + rx, y});
  out.close();
}

}  // namespace gownsheaf
