// A tree kept as bytes comes back as the reader made it.
#include "read/kept_entry.h"
#include "support/catch.h"
#include "support/same_entry.h"

using namespace gownsheaf;

namespace {

Entry read(const std::string& text, const std::string& file) {
  Diagnostics diag;
  const Entry e = read_yaml(text, file, diag);
  REQUIRE(diag.in_order_found().empty());
  return e;
}

const std::string kText =
    "title: \"Größe 13½\"\nempty:\nlist:\n  - one\n  -\n  - {a: 'b: c', d: [1, [2, 3]]}\n"
    "long: >\n  runs on\n  and on\n" +
    std::string(300, 'k') + ": " + std::string(20000, 'v') + "\n";

}  // namespace

TEST_CASE("a kept tree is the tree that was read, in whatever file it is found", "[kept]") {
  const std::string kept = keep_entry(read(kText, "here.yaml"));
  CHECK(test::first_difference(kept_entry(kept, "here.yaml"), read(kText, "here.yaml")) == "");
  CHECK(test::first_difference(kept_entry(kept, "/else/where.yaml"), read(kText, "/else/where.yaml")) == "");
  CHECK(test::first_difference(kept_entry(kept, "here.yaml"), read(kText, "there.yaml")) != "");
}

TEST_CASE("a kept tree cut short is nothing", "[kept]") {
  const std::string kept = keep_entry(read("a: 1\nb: [2, {c: 3}]\n", "here.yaml"));
  for (std::size_t size = 0; size < kept.size(); ++size)
    CHECK(kept_entry(std::string_view(kept).substr(0, size), "here.yaml").kind == Entry::Kind::nothing);
  CHECK(kept_entry(kept, "here.yaml").kind == Entry::Kind::block);
}
