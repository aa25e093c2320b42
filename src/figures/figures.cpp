#include "figures/figures.h"

#include <stdexcept>

namespace gownsheaf {
namespace {

LengthText cloth_text(Length length, Action action, ShownIn shown_in) {
  // What must be bought rounds up; what lies on the shelf or is left over rounds down. A length that the shop's step does
  // not meet is said in the small unit, so that the print never claims cloth that is not there.
  const Rounding rounding = action == Action::buy ? Rounding::up : Rounding::down;
  const Length step = shown_in == ShownIn::inches ? Length::inches(36).times(1, 8) : Length::cm(1);
  if (length.to_step(step, Rounding::nearest) == length) return cloth_text_of(length, shown_in, rounding);
  return text_of(length, shown_in, cut_step(shown_in), rounding);
}

struct InWords {
  const Figure& figure;
  ShownIn in;
  bool inches() const { return in == ShownIn::inches; }
  std::string operator()(std::monostate) const { return ""; }
  std::string operator()(Length) const { return length_text(figure, in).plain(); }
  std::string operator()(Area a) const {
    return inches() ? decimal(a.in_square_inches() / 1296, 2) + " yd²" : decimal(a.in_square_metres(), 2) + " m²";
  }
  std::string operator()(Mass m) const {
    return inches() ? decimal(m.value / kGramsPerOunce / 16, 2) + " lb" : decimal(m.value / 1000, 2) + " kg";
  }
  std::string operator()(MassPerArea w) const {
    return inches() ? decimal(w.value / kGramsPerSquareMetrePerOuncePerSquareYard, 1) + " oz/yd²" : decimal(w.value, 0) + " g/m²";
  }
  std::string operator()(Force f) const {
    return inches() ? decimal(f.value / kNewtonsPerPoundForce, 2) + " lbf" : decimal(f.value, 1) + " N";
  }
  std::string operator()(Pressure p) const {
    return inches() ? decimal(p.value / kPascalsPerMillimetreOfMercury, 0) + " mmHg" : decimal(p.value / 1000, 1) + " kPa";
  }
  std::string operator()(LoadPerLength l) const {
    return inches() ? decimal(l.value / kNewtonsPerMetrePerPoundForcePerInch, 2) + " lbf/in"
                    : decimal(l.value / 100, 2) + " N/cm";
  }
  std::string operator()(Angle a) const { return decimal(a.value, 1) + " deg"; }
  std::string operator()(Ratio r) const {
    const bool plain = r.d <= 4 || r.d == 5 || r.d == 8 || r.d == 10;
    return plain ? text_of(r) : decimal(r.value(), 2);  // 6 1/7 is no help at the table
  }
  std::string operator()(Percent p) const {  // 47 31/227 % is no help at the table
    return p.of_one.n * 1000 % p.of_one.d == 0 ? text_of(p) : decimal(p.of_one.value() * 100, 1) + " %";
  }
  std::string operator()(const Money& m) const {
    const std::string amount = decimal(static_cast<double>(m.hundredths) / 100, 2);
    if (m.per.empty()) return amount;
    return m.per == "each" ? amount + " each" : amount + " per " + m.per;
  }
  std::string operator()(Day d) const { return long_day(d); }
  std::string operator()(Span s) const { return text_of(s); }
  std::string operator()(const Rate& r) const {
    const std::string amount = text_of(r.amount) + (r.of.empty() ? "" : " " + r.of);
    return r.per == "each" ? amount + " each" : amount + " per " + r.per;
  }
  std::string operator()(std::int64_t n) const { return whole_number(n); }
  std::string operator()(const std::string& s) const { return s; }
  std::string operator()(bool b) const { return b ? "yes" : "no"; }
};

}  // namespace

std::string_view word_for(Action a) {
  switch (a) {
    case Action::none: return "none";
    case Action::recut: return "recut";
    case Action::remark: return "re-mark";
    case Action::buy: return "buy";
  }
  throw std::logic_error("word_for: no such action");
}

void Figures::forget_after(std::size_t count) {
  while (all_.size() > count) {
    by_key_.erase(by_key_.find(all_.back().key));
    all_.pop_back();
  }
}

const Figure& Figures::add(Figure f) {
  if (all_.empty()) all_.reserve(1024);  // a packet has hundreds: moved as seldom as can be
  if (f.key.empty()) throw std::logic_error("a figure needs a key");
  if (!by_key_.emplace(f.key, all_.size()).second) throw std::logic_error("figure given twice: " + f.key);
  all_.push_back(std::move(f));
  return all_.back();
}

const Figure* Figures::find(std::string_view key) const {
  const auto it = by_key_.find(key);
  return it == by_key_.end() ? nullptr : &all_[it->second];
}

const Figure& Figures::at(std::string_view key) const {
  if (const Figure* f = find(key)) return *f;
  throw std::out_of_range("no figure " + std::string(key));
}

std::optional<Length> Figures::length(std::string_view key) const {
  const Figure* f = find(key);
  if (f == nullptr) return std::nullopt;
  const Length* l = std::get_if<Length>(&f->value);
  return l == nullptr ? std::nullopt : std::optional(*l);
}

std::optional<std::int64_t> Figures::count(std::string_view key) const {
  const Figure* f = find(key);
  if (f == nullptr) return std::nullopt;
  const std::int64_t* n = std::get_if<std::int64_t>(&f->value);
  return n == nullptr ? std::nullopt : std::optional(*n);
}

LengthText length_text(const Figure& f, ShownIn shown_in) {
  const Length length = std::get<Length>(f.value);
  switch (f.shown) {
    case Shown::cut: return text_of(length, shown_in, cut_step(shown_in), Rounding::up);
    case Shown::mark: return text_of(length, shown_in, mark_step(shown_in), Rounding::nearest);
    case Shown::pleat_mark: return text_of(length, shown_in, f.step.value_or(pleat_step(shown_in)), Rounding::nearest);
    case Shown::cloth: return cloth_text(length, f.action, shown_in);
    case Shown::exact: break;
  }
  const Length finest = shown_in == ShownIn::inches ? Length::sixty_fourths(1) : Length::tenth_mm(1);
  return text_of(length, shown_in, finest, Rounding::nearest);
}

std::string plain_text(const Figure& f, ShownIn shown_in) { return std::visit(InWords{f, shown_in}, f.value); }
std::string plain_text(const Value& value, ShownIn shown_in) {
  Figure f;
  f.value = value;
  return plain_text(f, shown_in);
}

}  // namespace gownsheaf
