// The words of a sheet's blocks, one line each, for tests that read a sheet as its reader does.
#pragma once
#include <string>
#include <variant>
#include <vector>

#include "layout/block.h"

namespace gownsheaf::testing {

inline std::string plain_of(const Block& b) {
  struct Reader {
    std::string operator()(const Heading& h) const { return "# " + plain(h.text); }
    std::string operator()(const Paragraph& p) const { return plain(p.text); }
    std::string operator()(const PairRow& r) const {
      return plain(r.left) + (r.left_under.empty() ? "" : " (" + plain(r.left_under) + ")") + " | " + plain(r.right);
    }
    std::string operator()(const Table& t) const {
      std::string out;
      for (const Column& c : t.columns) out += "[" + plain(c.head) + "]";
      for (const Row& r : t.rows) {
        out += "\n";
        for (std::size_t i = 0; i < r.cells.size(); ++i) out += (i == 0 ? "" : " | ") + plain(r.cells[i].text);
      }
      return out;
    }
    std::string operator()(const StepBlock& s) const {
      std::string out = std::to_string(s.number) + ".";
      for (const Text& h : s.holds) out += " " + plain(h) + ".";
      out += " " + plain(s.act);
      if (!s.reason.empty()) out += " / " + plain(s.reason);
      if (!s.cannot_undo.empty()) out += " / Cannot be undone: " + s.cannot_undo + ".";
      for (const Text& f : s.figures) out += " > " + plain(f);
      if (!s.id.empty()) out += " @ " + s.id;
      return out;
    }
    std::string operator()(const WriteIn& w) const {
      std::string out;
      for (const auto& blank : w.blanks) out += plain(blank.first) + " ____ ";
      return out;
    }
    std::string operator()(const Drawing& d) const {
      std::string out = "<" + d.name + ">";
      for (const DrawingItem& i : d.items) {
        if (const auto* label = std::get_if<Label>(&i)) out += " {" + plain(label->text) + "}";
      }
      return out + " " + plain(d.caption);
    }
    std::string operator()(const Gap&) const { return ""; }
    std::string operator()(const Rule&) const { return "----"; }
    std::string operator()(const ContentsLine& c) const { return c.title + " ... " + c.anchor; }
  };
  return std::visit(Reader{}, b.what);
}

inline std::string plain_of(const Sheet& s) {
  std::string out = s.title + "\n" + plain(s.answer) + "\n";
  for (const Block& b : s.blocks) out += plain_of(b) + "\n";
  return out;
}

inline bool says(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace gownsheaf::testing
