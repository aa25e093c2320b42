#include "project/project.h"

#include "support/catch.h"

using namespace gownsheaf;

TEST_CASE("names compare without regard to case, in any script that has one") {
  CHECK(same_name("Slate Wool", "slate wool"));
  CHECK(same_name("GRÜNE SEIDE", "grüne seide"));
  CHECK(same_name("ŁÓDŹ", "łódź"));
  CHECK(same_name("ΦΟΥΣΤΑ", "φουστα"));
  CHECK(same_name("ЮБКА", "юбка"));
  CHECK(same_name("Gruß", "GRUSS"));  // as the checker matches names: full folding
  CHECK(same_name("Σάς", "ΣΆΣ"));
  CHECK_FALSE(same_name("Gruß", "grus"));
  CHECK_FALSE(same_name("slate wool", "slate wools"));
  CHECK_FALSE(same_name("slate wool", "slate woll"));
  CHECK_FALSE(same_name("×", "÷"));  // the signs between the Latin capitals are not letters
  CHECK(same_name("", ""));
}

TEST_CASE("usable width is the width less a selvage at each edge") {
  Cloth cloth;
  cloth.width = Given<Length>::written(Length::cm(140), {});
  cloth.selvage = Given<Length>::written(Length::cm(1), {});
  CHECK(cloth.usable_width() == Length::cm(138));  // 140 - 2 * 1
}

TEST_CASE("look-ups find by name and give nothing for a name that is not there") {
  Project project;
  project.cloths.resize(2);
  project.cloths[0].named.name = "Slate wool";
  project.cloths[1].named.name = "white muslin";
  project.pieces.resize(1);
  project.pieces[0].named.name = "skirt breadth";
  project.pleats.resize(1);
  project.pleats[0].named.name = "sides";
  project.rounds.resize(1);
  project.rounds[0].named.name = "whole skirt";
  CHECK(project.cloth("slate wool") == &project.cloths[0]);
  CHECK(project.cloth("WHITE MUSLIN") == &project.cloths[1]);
  CHECK(project.cloth("green wool") == nullptr);
  CHECK(project.piece("skirt breadth") == &project.pieces[0]);
  CHECK(project.run("sides") == &project.pleats[0]);
  CHECK(project.round("whole skirt") == &project.rounds[0]);
  CHECK(project.round("sides") == nullptr);
}

TEST_CASE("each closed choice has one word, and no two share it") {
  const auto apart = [](auto last) {
    using E = decltype(last);
    for (int i = 0; i <= static_cast<int>(last); ++i) {
      CHECK_FALSE(word_for(static_cast<E>(i)).empty());
      for (int k = 0; k < i; ++k) CHECK(word_for(static_cast<E>(i)) != word_for(static_cast<E>(k)));
    }
  };
  apart(Garment::other);
  apart(UsedAs::mock_up);
  apart(LayRule::any_way);
  apart(PartOf::trimming);
  apart(Grain::bias);
  apart(PleatKind::inverted_at_seams);
  apart(Toward::right);
}
