// Reads one line of the condition language into a tree. Recursive descent; each level of brackets or `not` is counted, so
// that no text can exhaust the stack.
#include <algorithm>
#include <optional>

#include "templates/condition_node.h"
#include "unicode/utf8.h"
#include "units/read.h"

namespace gownsheaf {
namespace {

using Node = Condition::Node;
using NodePtr = std::shared_ptr<const Node>;
constexpr int kDeepest = 32;
constexpr std::size_t kLongest = 1000;

struct Token {
  enum class Kind { word, open, close, than } kind = Kind::word;
  std::string text;
  std::size_t byte = 0;
  int column = 0, length = 0;  // in characters, from 0
};

std::vector<Token> tokens_of(std::string_view text) {
  std::vector<Token> tokens;
  const auto ends_word = [](char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '(' || c == ')' || c == '<' || c == '>' || c == '=';
  };
  int column = 0;
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
      ++i;
      ++column;
      continue;
    }
    Token t{Token::Kind::word, "", i, column, 1};
    std::size_t end = i + 1;
    if (c == '(') t.kind = Token::Kind::open;
    else if (c == ')') t.kind = Token::Kind::close;
    else if (c == '<' || c == '>' || c == '=') {
      t.kind = Token::Kind::than;
      if (c != '=' && end < text.size() && text[end] == '=') ++end;
    } else {
      while (end < text.size() && !ends_word(text[end])) ++end;
    }
    t.text = std::string(text.substr(i, end - i));
    t.length = count_characters(t.text);
    column += t.length;
    i = end;
    tokens.push_back(std::move(t));
  }
  return tokens;
}

struct Fault {};  // thrown and caught in this file: the first fault ends the reading

class Reader {
 public:
  Reader(std::string_view text, const SourceSpan& at, Diagnostics& diag)
      : text_(text), at_(at), diag_(diag), tokens_(tokens_of(text)) {
    // Where the text was quoted, the place counts the two marks as well.
    if (at_.length == count_characters(text) + 2) shift_ = 1;
  }

  NodePtr whole() {
    if (tokens_.empty()) fail("condition-form", at_, "A condition holds nothing.", "has pleats");
    NodePtr node = either();
    if (!ended()) {
      if (now().kind == Token::Kind::close) fail("condition-form", now(), "A closing bracket has no opening one.", "take it out");
      fail("condition-form", now(), "`" + now().text + "` follows a whole question; two are joined by `and` or `or`.",
           "and " + now().text);
    }
    return node;
  }

 private:
  bool ended() const { return next_ >= tokens_.size(); }
  const Token& now() const { return tokens_[next_]; }
  bool sees(std::string_view word) const { return !ended() && now().kind == Token::Kind::word && now().text == word; }
  bool takes(std::string_view word) {
    if (!sees(word)) return false;
    ++next_;
    return true;
  }

  SourceSpan place(int column, int length) const {
    SourceSpan s = at_;
    if (s.line > 0) {
      s.column = at_.column + shift_ + column;
      s.length = std::max(1, length);
    }
    return s;
  }
  SourceSpan place(std::size_t first, std::size_t end) const {
    const Token &a = tokens_[first], &b = tokens_[end - 1];
    return place(a.column, b.column + b.length - a.column);
  }
  [[noreturn]] void fail(std::string code, SourceSpan s, std::string sentence, std::string hint) {
    diag_.error(std::move(code), s.line > 0 ? std::move(s) : at_, std::move(sentence), std::move(hint));
    throw Fault{};
  }
  [[noreturn]] void fail(std::string code, const Token& t, std::string sentence, std::string hint) {
    fail(std::move(code), place(t.column, t.length), std::move(sentence), std::move(hint));
  }
  [[noreturn]] void fail_at_end(std::string sentence, std::string hint) {
    if (tokens_.empty()) fail("condition-form", at_, std::move(sentence), std::move(hint));
    fail("condition-form", tokens_.back(), std::move(sentence), std::move(hint));
  }

  static NodePtr joined(Node::Op op, NodePtr a, NodePtr b) {
    auto n = std::make_shared<Node>();
    n->op = op;
    n->below.push_back(std::move(a));
    if (b) n->below.push_back(std::move(b));
    return n;
  }
  // Questions in a row join two and two, so that a long row makes a shallow tree.
  static NodePtr joined_all(Node::Op op, std::vector<NodePtr> row) {
    while (row.size() > 1) {
      std::vector<NodePtr> next;
      for (std::size_t i = 0; i + 1 < row.size(); i += 2) next.push_back(joined(op, row[i], row[i + 1]));
      if (row.size() % 2 == 1) next.push_back(row.back());
      row = std::move(next);
    }
    return row.front();
  }

  NodePtr either() {
    std::vector<NodePtr> row{both()};
    while (takes("or")) row.push_back(both());
    return joined_all(Node::Op::either, std::move(row));
  }
  NodePtr both() {
    std::vector<NodePtr> row{negated()};
    while (takes("and")) row.push_back(negated());
    return joined_all(Node::Op::both, std::move(row));
  }
  NodePtr negated() {
    bool turned = false;
    while (takes("not")) turned = !turned;
    NodePtr node = single();
    return turned ? joined(Node::Op::negated, std::move(node), nullptr) : node;
  }

  NodePtr single() {
    if (ended()) fail_at_end("A condition ends where a question is wanted.", "has pleats");
    if (now().kind == Token::Kind::open) {
      if (++depth_ > kDeepest) fail("condition-form", now(), "Brackets lie more than 32 deep in a condition.", "take some out");
      ++next_;
      NodePtr node = either();
      if (ended()) fail_at_end("A bracket in a condition is never closed.", ")");
      if (now().kind != Token::Kind::close)
        fail("condition-form", now(), "`" + now().text + "` follows a whole question; two are joined by `and` or `or`.",
             "and " + now().text);
      ++next_;
      --depth_;
      return node;
    }
    auto node = std::make_shared<Node>();
    const bool has = takes("has");
    const std::size_t first = next_;
    node->fact = fact();
    if (has) return node;
    if (takes("is")) {
      const bool turned = takes("not");
      node->op = Node::Op::is_word;
      node->word = word_of(*node->fact);
      return turned ? joined(Node::Op::negated, std::move(node), nullptr) : NodePtr(std::move(node));
    }
    if (ended() || now().kind != Token::Kind::than)
      fail("condition-form", place(first, next_),
           "`" + std::string(node->fact->name) + "` stands without a question: `has` before it, or `is`, `<`, `>=` after it.",
           "has " + std::string(node->fact->name));
    node->op = Node::Op::compare;
    node->than = than_of(now().text);
    ++next_;
    node->quantity = quantity_for(*node->fact);
    node->asked = words(first, next_);
    return node;
  }

  // Tokens from here to the next word that cannot belong to a name.
  std::size_t end_of_words(bool stop_at_is) const {
    std::size_t end = next_;
    while (end < tokens_.size() && tokens_[end].kind == Token::Kind::word && tokens_[end].text != "and" &&
           tokens_[end].text != "or" && !(stop_at_is && tokens_[end].text == "is"))
      ++end;
    return end;
  }
  std::string words(std::size_t first, std::size_t end) const {
    std::string s;
    for (std::size_t i = first; i < end; ++i) {
      if (!s.empty()) s += ' ';
      s += tokens_[i].text;
    }
    return s;
  }

  const FactKind* fact() {
    if (ended()) fail_at_end("A condition ends where a fact is wanted.", "has pleats");
    if (now().kind != Token::Kind::word || now().text == "and" || now().text == "or" || now().text == "is")
      fail("condition-form", now(), "`" + now().text + "` stands where a fact is wanted.", "has pleats");
    const std::size_t end = end_of_words(true);
    for (std::size_t stop = end; stop > next_; --stop)
      if (const FactKind* kind = find_fact(words(next_, stop))) {
        next_ = stop;
        return kind;
      }
    std::vector<std::string> names;
    for (const FactKind& kind : fact_kinds()) names.emplace_back(kind.name);
    const std::string seen = words(next_, end);
    const std::string near = did_you_mean(seen, names);
    fail("unknown-fact", place(next_, end), "`" + seen + "` is no fact that a condition may ask for.",
         near.empty() ? "facts are such as skirt, pleats, hem depth, cloth breadths" : "did you mean `" + near + "`?");
  }

  std::string word_of(const FactKind& kind) {
    if (kind.type != FactType::word)
      fail("fact-type", place(next_ - 1, next_), "`" + std::string(kind.name) + "` is no word, so `is` cannot follow it.",
           kind.type == FactType::yes_no ? "has " + std::string(kind.name) : std::string(kind.name) + " >= …");
    if (ended() || now().kind != Token::Kind::word) fail_at_end("A condition ends where a word is wanted.", choices(kind));
    // A word may hold `and` (`hooks and eyes`), so the list is asked before the language is.
    std::size_t run = next_;
    while (run < tokens_.size() && tokens_[run].kind == Token::Kind::word) ++run;
    for (std::size_t stop = run; stop > next_; --stop) {
      const std::string seen = words(next_, stop);
      if (std::find(kind.words.begin(), kind.words.end(), seen) != kind.words.end()) {
        next_ = stop;
        return seen;
      }
    }
    const std::size_t end = std::max(next_ + 1, end_of_words(false));
    const std::string seen = words(next_, end);
    const std::string near = did_you_mean(seen, {kind.words.begin(), kind.words.end()});
    fail("unknown-word", place(next_, end), "`" + seen + "` is not one of the words for `" + std::string(kind.name) + "`.",
         near.empty() ? choices(kind) : "did you mean `" + near + "`? " + choices(kind));
  }
  static std::string choices(const FactKind& kind) {
    std::string s = "the words are ";
    for (std::size_t i = 0; i < kind.words.size(); ++i) s += (i ? ", " : "") + std::string(kind.words[i]);
    return s;
  }

  static Node::Than than_of(std::string_view sign) {
    if (sign == "<") return Node::Than::less;
    if (sign == "<=") return Node::Than::at_most;
    if (sign == "=") return Node::Than::equal;
    return sign == ">=" ? Node::Than::at_least : Node::Than::more;
  }

  template <class T>
  T quantity_read(ReadResult<T> read, const Token& from) {
    if (!read.ok()) {
      const Misread& fault = read.fault();
      fail(fault.code, place(from.column + fault.at, fault.length > 0 ? fault.length : from.length), fault.sentence, fault.hint);
    }
    return read.value();
  }

  FactValue quantity_for(const FactKind& kind) {
    const Token sign = tokens_[next_ - 1];
    if (kind.type == FactType::yes_no || kind.type == FactType::word)
      fail("fact-type", sign, "`" + std::string(kind.name) + "` is no amount, so `" + sign.text + "` cannot follow it.",
           kind.type == FactType::yes_no ? "has " + std::string(kind.name) : std::string(kind.name) + " is …");
    const std::size_t end = end_of_words(false);
    if (end == next_) {
      if (ended()) fail_at_end("A condition ends where an amount is wanted.", std::string(kind.name) + " " + sign.text + " …");
      fail("condition-form", now(), "`" + now().text + "` stands where an amount is wanted.",
           std::string(kind.name) + " " + sign.text + " …");
    }
    const Token first = tokens_[next_], last = tokens_[end - 1];
    const std::string_view written = text_.substr(first.byte, last.byte + last.text.size() - first.byte);
    next_ = end;
    switch (kind.type) {
      case FactType::count: return quantity_read(read_count(written, kind.name), first);
      case FactType::length: return quantity_read(read_length(written, kind.name), first).length;
      case FactType::mass: return quantity_read(read_mass(written, kind.name), first);
      case FactType::ratio: return quantity_read(read_ratio(written, kind.name), first);
      case FactType::line_load: return quantity_read(read_line_load(written, kind.name), first);
      case FactType::cloth_weight: {
        const WrittenWeight weight = quantity_read(read_cloth_weight(written, kind.name), first);
        if (!weight.weight)
          fail("fact-type", place(first.column, last.column + last.length - first.column),
               "A weight per running yard needs the width it is spread over.", "8 oz/yd²");
        return *weight.weight;
      }
      case FactType::yes_no:
      case FactType::word: break;
    }
    return {};
  }

  std::string_view text_;
  SourceSpan at_;
  Diagnostics& diag_;
  std::vector<Token> tokens_;
  std::size_t next_ = 0;
  int depth_ = 0, shift_ = 0;
};

}  // namespace

Condition parse_condition(std::string_view text, const SourceSpan& at, Diagnostics& diag) {
  if (text.size() > kLongest) {
    diag.error("condition-form", at, "A condition is longer than 1,000 letters.", "split the step in two");
    return {};
  }
  try {
    Reader reader(text, at, diag);
    return Condition(reader.whole(), std::string(text));
  } catch (const Fault&) {
    return {};
  }
}

}  // namespace gownsheaf
