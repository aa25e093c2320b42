#include <random>

#include "read/entry.h"
#include "support/catch.h"

using namespace gownsheaf;

namespace {

// key=text, key?, key[...], key{...}; quoted text in "".
std::string sketch(const Entry& e) {
  std::string s = e.key;
  switch (e.kind) {
    case Entry::Kind::nothing: return s + "?";
    case Entry::Kind::text: return s + (s.empty() ? "" : "=") + (e.quoted ? "\"" + e.text + "\"" : e.text);
    default: break;
  }
  s += e.kind == Entry::Kind::list ? "[" : "{";
  for (std::size_t i = 0; i < e.children.size(); ++i) s += (i ? "," : "") + sketch(e.children[i]);
  return s + (e.kind == Entry::Kind::list ? "]" : "}");
}

std::string read(const std::string& text) {
  Diagnostics diag;
  const Entry root = read_yaml(text, "gown.yaml", diag);
  std::string faults;
  for (const Diagnostic& d : diag.in_order_found()) faults += "!" + d.code;
  return faults.empty() ? sketch(root) : faults;
}

const std::string kGown = R"(# A tea gown
gownsheaf: 1
title: "Tea gown: rose silk"   # quoted for its colon
worn on: 2031-06-14
measures: { waist: 26 1/2 in, bust: 36 in,
  waist to floor: { front: 40 in, back: '43 in' } }
cloths:
  rose silk: { kind: silk taffeta, width: 54 in, bought: [5 yd, 1 1/2 yd] }
  white muslin:
    kind: cotton muslin
    width: 45 in
pieces:
- piece: skirt breadth
  from: [rose silk, white muslin]
  make: 3
- { piece: sash, from: rose silk, note: "ends, cut
    on the slant" }
note: |
  Wash first: twice.
  "Do not iron

    the flounce" # not a remark
long: >-
  folded
  lines
remarks: a plain text
  that runs on
  - with a dash
last: to measure
)";

}  // namespace

TEST_CASE("what is good YAML is read as written, and nothing is found fault with") {
  CHECK(read(kGown) ==
        "{gownsheaf=1,title=\"Tea gown: rose silk\",worn on=2031-06-14,"
        "measures{waist=26 1/2 in,bust=36 in,waist to floor{front=40 in,back=\"43 in\"}},"
        "cloths{rose silk{kind=silk taffeta,width=54 in,bought[5 yd,1 1/2 yd]},"
        "white muslin{kind=cotton muslin,width=45 in}},"
        "pieces[{piece=skirt breadth,from[rose silk,white muslin],make=3},"
        "{piece=sash,from=rose silk,note=\"ends, cut on the slant\"}],"
        "note=\"Wash first: twice.\n\"Do not iron\n\n  the flounce\" # not a remark\","
        "long=\"folded lines\",remarks=a plain text that runs on - with a dash,last=to measure}");
}

TEST_CASE("no scalar is typed: what YAML turns into numbers, truth or nothing stays text") {
  CHECK(read("a: 013\nb: yes\nc: 1e3\nd: null\ne: ~\nf: 12:30\ng: 1_000\nh: on\ni: 0x1f\nj: 2031-06-14\n") ==
        "{a=013,b=yes,c=1e3,d=null,e=~,f=12:30,g=1_000,h=on,i=0x1f,j=2031-06-14}");
  CHECK(read("null: 1\n~: 2\nno: 3\n") == "{null=1,~=2,no=3}");
  CHECK(read("a: { null: x, b: null, c: [~, null] }\n") == "{a{null=x,b=null,c[~,null]}}");
}

TEST_CASE("nothing after a key or dash is nothing, whatever comes next") {
  CHECK(read("a:\nnull: x\n") == "{a?,null=x}");
  CHECK(read("a:\n  b:\nnull: x\n") == "{a{b?},null=x}");
  CHECK(read("size: # 2\nb: 1\n") == "{size?,b=1}");
  CHECK(read("l:\n-\n- null\n- a\n-\nnull: 1\n") == "{l[?,null,a,?],null=1}");
  CHECK(read("a: { b: , c: 1 }\n") == "{a{b?,c=1}}");
  CHECK(read("a:\n  null\n") == "{a=null}");
}

TEST_CASE("legal forms that look like slips are left alone") {
  for (const char* text : {
           "a: 13\"\n",                                         // the checker speaks of inch marks
           "a: it's 5' long\n",                                 // marks inside plain text
           "a: http://example.org/b\n",                         // a colon without a space
           "a:\n  see http://example.org\n",                    //
           "a: \"x: y\"\nb: 'it''s: so'\n",                     // colons in quotes
           "a: \"say \\\"so\\\": yes\"\n",                      //
           "\"a: b\": 1\n",                                     // and in a quoted key
           "a: \"over\n  two lines: yes\"\nb: 1\n",             //
           "a: [b,\n\n  # remark with ] and \"\n  c]\nd: 1\n",  //
           "a: {\n  b: 1,\n  c: { d: 2 }\n}\ne: 1\n",           // a bracket closed at the margin
           "a: [\n]\n",                                         //
           "a:\n- b\n- c\nd: 1\n",                              // a list no further in than its key
           "a:\n-   b: 1\n    c: 2\n-   - d\n    - e\n",        // wide steps, lists in lists
           "a:\n      b: 1\nc:\n d: 1\n",                       // steps of any width
           "a: |\n  x\n  \tb: \"\nc: 1\n",                      // anything goes in a text block
           "a: >\n\n  \"open\n  tab\there: [\n\nb: 1\n",        //
           "a: |2\n    deeper\n  x\nb: 1\n",                    //
           "l:\n  - |\n    x: \"\n  - y\n",                     //
           "a: b#c\nd: e # f: g \"\n",                          //
           "a: plain\n  runs on\n\n  and on\nb: 1\n",           //
           "a:\n  plain below its key\n  runs on\nb: 1\n",      //
           "a: -5 C\nb: -\xC2\xBD\n",                           //
           "a: b, c [d] {e}\n",                                 // brackets inside plain text
           "a : 1\nb:\t2\nc:   3  \n",                          // blanks around values
           "---\na: 1\n...\n",                                  //
           "---\na: 1\n...\n# remark\n\n",                      //
           "{ a: 1, b: [2, 3] }\n",                             // all in brackets
           "a: {b: 1,\n\tc: 2}\n",                              // a tab where YAML allows one
           "a: 1\n\t\n \t # remark\nb: 2\n",                    // and on lines that are empty
           "a: [x: 1]\n",                                       // one pair in a list
           "a: 1",                                              // no line end
       }) {
    CAPTURE(text);
    CHECK(read(text).front() == '{');
  }
}

TEST_CASE("every entry knows its place") {
  Diagnostics diag;
  const Entry root = read_yaml("größe: ½ in\nl:\n  - { \"a b\": 'x y' }\n  - plain text   # remark\n  -\n", "g.yaml", diag);
  REQUIRE(diag.in_order_found().empty());
  const Entry* size = root.find("größe");
  REQUIRE(size);
  CHECK(size->key_at == SourceSpan{"g.yaml", 1, 1, 5});
  CHECK(size->at == SourceSpan{"g.yaml", 1, 8, 4});
  const Entry* list = root.find("l");
  REQUIRE(list);
  REQUIRE(list->children.size() == 3);
  CHECK(list->at == SourceSpan{"g.yaml", 3, 3, 1});
  CHECK(list->children[0].at == SourceSpan{"g.yaml", 3, 5, 1});
  CHECK(list->children[0].children[0].key_at == SourceSpan{"g.yaml", 3, 7, 5});
  CHECK(list->children[0].children[0].at == SourceSpan{"g.yaml", 3, 14, 5});
  CHECK(list->children[1].at == SourceSpan{"g.yaml", 4, 5, 10});
  CHECK(list->children[2].kind == Entry::Kind::nothing);
  CHECK(list->children[2].at == SourceSpan{"g.yaml", 5, 3, 1});
  CHECK_FALSE(root.find("L"));
  CHECK_FALSE(list->find("l"));
}

TEST_CASE("an entry that is nothing is placed at its key") {
  Diagnostics diag;
  const Entry root = read_yaml("a: 1\nsize:   # 2\n\n\nb: 2\n", "g.yaml", diag);
  REQUIRE(root.find("size"));
  CHECK(root.find("size")->kind == Entry::Kind::nothing);
  CHECK(root.find("size")->at == SourceSpan{"g.yaml", 2, 1, 4});
}

TEST_CASE("lines for messages: byte order mark gone, line ends alike") {
  CHECK(lines_of("\xEF\xBB\xBF"
                 "a: 1\r\nb: 2\rc: 3",
                 "g")
            .lines == std::vector<std::string>{"a: 1", "b: 2", "c: 3"});
  CHECK(lines_of("a\n\nb\n", "g").lines == std::vector<std::string>{"a", "", "b"});
  CHECK(lines_of("", "g").lines.empty());
}

TEST_CASE("a file cut off anywhere is read or refused in words") {
  for (std::size_t n = 0; n <= kGown.size(); ++n) {
    Diagnostics diag;
    const Entry root = read_yaml(kGown.substr(0, n), "g", diag);
    CHECK((root.kind == Entry::Kind::block) == diag.in_order_found().empty());
  }
}

TEST_CASE("changed bytes never bring the reader down, and every message has its place") {
#ifdef GOWNSHEAF_SANITIZED
  const int rounds = 2000;
#else
  const int rounds = 20000;
#endif
  std::mt19937 draw(20310614);
  const auto upto = [&](std::size_t n) { return static_cast<std::size_t>(draw() % n); };
  const std::string signs = "\t\n\r \"'#&*!%@`[]{}:,-?|><~.\\0a\xC3\xA9\xFF";
  int good = 0, bad = 0;
  for (int i = 0; i < rounds; ++i) {
    std::string text = kGown;
    for (std::size_t n = 1 + upto(4); n > 0; --n) {
      const std::size_t at = upto(text.size());
      switch (upto(5)) {
        case 0: text[at] = static_cast<char>(upto(256)); break;
        case 1: text[at] = signs[upto(signs.size())]; break;
        case 2: text.insert(at, 1, signs[upto(signs.size())]); break;
        case 3: text.erase(at, 1 + upto(8)); break;
        default: text.insert(at, text.substr(upto(text.size()), upto(40))); break;
      }
    }
    Diagnostics diag;
    const Entry root = read_yaml(text, "g", diag);
    const SourceText source = lines_of(text, "g");
    bool placed = true, only_twice = true;
    for (const Diagnostic& d : diag.in_order_found()) {
      placed = placed && d.at.line >= 1 && d.at.column >= 1 && d.at.length >= 1 &&
               d.at.line <= static_cast<int>(source.lines.size()) + 1 && !d.sentence.empty();
      only_twice = only_twice && d.code == "key-twice";
    }
    if (!placed || (root.kind == Entry::Kind::block) != only_twice) {
      CAPTURE(i, text);
      CHECK(placed);
      CHECK((root.kind == Entry::Kind::block) == only_twice);
    }
    (diag.in_order_found().empty() ? good : bad)++;
  }
  CHECK(good > 0);
  CHECK(bad > 0);
}
