// What a closing's drawing prints is what its figures say.
#include "packet/closing_drawing.h"

#include <algorithm>

#include "calculate/closures.h"
#include "support/catch.h"
#include "support/garment.h"
#include "support/small_project.h"

using namespace gownsheaf;
using garment::in;
using garment::mm;

TEST_CASE("every distance in the drawing is its figure, and every fastener that has room is named", "[closing]") {
  for (const ShownIn shown : {ShownIn::inches, ShownIn::centimetres})
    for (const std::int64_t number : {1, 2, 6, 15, 60}) {
      Project project = garment::project(shown);
      Closure closure;
      closure.named = garment::named("front closing");
      closure.length = garment::said(in(27, 2));
      closure.number = garment::said(number);
      closure.top_inset = closure.bottom_inset = garment::said(mm(6));
      closure.lap = closure.underlap = garment::said(Length{});
      closure.turn_back = garment::said(in(1));
      closure.set_back = garment::said(in(1, 4));
      closure.meets = garment::said(Meets::edge_to_edge);
      closure.levels.push_back({"dart", in(5), {}});
      project.closures.push_back(closure);
      Figures figures;
      Diagnostics diag;
      const auto plans = add_closures(project, figures, diag);
      REQUIRE(plans.size() == 1);
      const FigureText text(figures, shown);
      const gownsheaf::testing::SmallProject small;
      const Typesetter typesetter(small.font, small.scale);
      const Drawing drawing = draw_closing(plans.front(), text, typesetter);
      std::vector<std::string> allowed;
      for (const Figure& f : figures.all())
        if (std::holds_alternative<Length>(f.value)) allowed.push_back(length_text(f, shown).plain());
      std::size_t lengths = 0;
      bool first = false, last = false, level = false;
      for (const DrawingItem& item : drawing.items) {
        const auto* label = std::get_if<Label>(&item);
        if (label == nullptr) continue;
        for (const Inline& part : label->text) {
          if (part.kind != Inline::Kind::length) continue;
          const std::string said = part.length.plain();
          if (label->at.y > drawing.height - Length::from_points(40)) continue;  // the scale bar's own length
          CHECK(std::find(allowed.begin(), allowed.end(), said) != allowed.end());
          ++lengths;
          first = first || said == length_text(figures.at("closures/front closing/fastener 1"), shown).plain();
          last =
              last || said == length_text(figures.at("closures/front closing/fastener " + whole_number(number)), shown).plain();
          level = level || said == length_text(figures.at("closures/front closing/at dart"), shown).plain();
        }
      }
      CHECK(first);
      CHECK(last);
      CHECK(level);
      if (number <= 6) CHECK(lengths >= static_cast<std::size_t>(number) + 2);
    }
}
