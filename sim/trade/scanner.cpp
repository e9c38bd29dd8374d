#include "sim/trade/scanner.h"

#include <array>
#include <charconv>
#include <cstddef>
#include <system_error>

namespace stowpath {
namespace {

struct Replacement {
  std::string_view typographic;
  std::string_view plain;
};

// A fraction character gets a space on both sides: 9½ is 9 1/2, and ½5 must not become 1/25.
constexpr std::array kReplacements{
    Replacement{"\u2032", "'"},      Replacement{"\u2018", "'"},     Replacement{"\u2019", "'"},
    Replacement{"\u00B4", "'"},      Replacement{"\u02B9", "'"},     Replacement{"\u2033", "\""},
    Replacement{"\u201C", "\""},     Replacement{"\u201D", "\""},    Replacement{"\u02DD", "\""},
    Replacement{"\u02BA", "\""},     Replacement{"\u2010", "-"},     Replacement{"\u2011", "-"},
    Replacement{"\u2012", "-"},      Replacement{"\u2013", "-"},     Replacement{"\u2014", "-"},
    Replacement{"\u2212", "-"},      Replacement{"\u2044", "/"},     Replacement{"\u2215", "/"},
    Replacement{"\u00A0", " "},      Replacement{"\u2007", " "},     Replacement{"\u2009", " "},
    Replacement{"\u202F", " "},      Replacement{"\t", " "},         Replacement{"\u00B0", "deg"},
    Replacement{"\u00BA", "deg"},    Replacement{"\u00BC", " 1/4 "}, Replacement{"\u00BD", " 1/2 "},
    Replacement{"\u00BE", " 3/4 "},  Replacement{"\u2150", " 1/7 "}, Replacement{"\u2151", " 1/9 "},
    Replacement{"\u2152", " 1/10 "}, Replacement{"\u2153", " 1/3 "}, Replacement{"\u2154", " 2/3 "},
    Replacement{"\u2155", " 1/5 "},  Replacement{"\u2156", " 2/5 "}, Replacement{"\u2157", " 3/5 "},
    Replacement{"\u2158", " 4/5 "},  Replacement{"\u2159", " 1/6 "}, Replacement{"\u215A", " 5/6 "},
    Replacement{"\u215B", " 1/8 "},  Replacement{"\u215C", " 3/8 "}, Replacement{"\u215D", " 5/8 "},
    Replacement{"\u215E", " 7/8 "}};

// Longer text is no measurement: the longest sensible one has some twenty characters.
constexpr size_t kLongestText = 200;
// Far beyond any building, and small enough that squares and cubes stay finite.
constexpr double kLargestNumber = 1e12;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return c >= 'a' && c <= 'z'; }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string plain_text(std::string_view text) {
  std::string plain;
  while (!text.empty()) {
    const Replacement* match = nullptr;
    for (const Replacement& candidate : kReplacements) {
      if (text.substr(0, candidate.typographic.size()) == candidate.typographic) match = &candidate;
    }
    if (match != nullptr) {
      plain += match->plain;
    } else {
      plain += lower(text.front());
    }
    text.remove_prefix(match != nullptr ? match->typographic.size() : 1);
  }
  return plain;
}

bool is_continuation_byte(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

// Bytes of the UTF-8 character that starts the text; 0 if none does, or if it is a control character.
size_t printable_character(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  if (lead < 0x80U) return lead >= 0x20U && lead != 0x7FU ? 1 : 0;
  const size_t size = lead >= 0xC2U && lead < 0xE0U ? 2 : lead >= 0xE1U && lead < 0xF0U ? 3 : 0;
  if (size == 0 || text.size() < size || lead == 0xEDU) return 0;
  for (size_t i = 1; i < size; ++i) {
    if (!is_continuation_byte(text[i])) return 0;
  }
  if (lead == 0xC2U && static_cast<unsigned char>(text[1]) < 0xA0U) return 0;
  return size;
}

// Everything that is quoted can go into JSON and onto a terminal: stray bytes and control characters show as question
// marks.
std::string quotation(std::string_view text) {
  constexpr size_t kShown = 40;
  std::string shown;
  while (!text.empty() && shown.size() < kShown) {
    const size_t size = printable_character(text);
    shown += size == 0 ? "?" : text.substr(0, size);
    text.remove_prefix(size == 0 ? 1 : size);
  }
  return "\u201C" + shown + (text.empty() ? "\u201D" : "\u2026\u201D");
}

}  // namespace

Scanner::Scanner(std::string_view text) : quoted_(quotation(text)) {
  if (text.size() > kLongestText) throw Refusal{"is too long to be a measurement", "write one number and its unit"};
  text_ = plain_text(text);
}

char Scanner::peek(size_t ahead) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }

void Scanner::skip_spaces() {
  while (peek() == ' ') ++at_;
}

bool Scanner::at_end() {
  skip_spaces();
  return at_ >= text_.size();
}

bool Scanner::at_number() const { return is_digit(peek()) || (peek() == '.' && is_digit(peek(1))); }

double Scanner::sign() {
  if (at_end()) throw Refusal{"is empty", "write a number and its unit"};
  const char first = peek();
  if (first != '-' && first != '+') return 1.0;
  ++at_;
  skip_spaces();
  if (peek() == '-' || peek() == '+') throw Refusal{quoted_ + " has two signs", "write one sign or none"};
  return first == '-' ? -1.0 : 1.0;
}

bool Scanner::separator() {
  skip_spaces();
  const bool dash = peek() == '-';
  if (dash) ++at_;
  skip_spaces();
  return dash;
}

std::string Scanner::digits() {
  const size_t start = at_;
  while (is_digit(peek())) ++at_;
  return text_.substr(start, at_ - start);
}

double Scanner::decimal_value(const std::string& digits_and_point) const {
  double value = 0.0;
  const char* const end = digits_and_point.data() + digits_and_point.size();
  const auto result = std::from_chars(digits_and_point.data(), end, value, std::chars_format::fixed);
  if (result.ec != std::errc{} || result.ptr != end || value > kLargestNumber) {
    throw Refusal{quoted_ + " is out of range", "write a number below 1000000000000"};
  }
  return value;
}

void Scanner::refuse_comma() const {
  size_t group = 0;
  while (is_digit(peek(1 + group))) ++group;
  if (group == 0) return;
  if (group == 3) throw Refusal{quoted_ + " has a comma in its number", "leave thousands unmarked: 1200, not 1,200"};
  throw Refusal{quoted_ + " has a comma in its number", "write a decimal point: 2.5, not 2,5"};
}

void Scanner::refuse_exponent() const {
  throw Refusal{quoted_ + " has an exponent or is hexadecimal", "write the number out: 1000, not 1e3"};
}

double Scanner::fraction_after(const std::string& numerator) {
  ++at_;  // the slash
  const std::string denominator = digits();
  if (denominator.empty()) throw Refusal{quoted_ + " has no number after its slash", "write a fraction as 3/8"};
  if (peek() == '.')
    throw Refusal{quoted_ + " has a decimal in its fraction", "write a fraction of whole numbers: 3/8"};
  const double divisor = decimal_value(denominator);
  if (divisor == 0.0) throw Refusal{quoted_ + " divides by zero", "write a fraction as 3/8"};
  return decimal_value(numerator) / divisor;
}

// `4 3/8`, `4-3/8` and `4 - 3/8`: looks ahead for digits and a slash, so that the dash of `9-4` is left alone.
bool Scanner::whole_fraction_follows(size_t& start) const {
  size_t ahead = 0;
  while (peek(ahead) == ' ') ++ahead;
  if (peek(ahead) == '-') ++ahead;
  while (peek(ahead) == ' ') ++ahead;
  start = at_ + ahead;
  size_t end = ahead;
  while (is_digit(peek(end))) ++end;
  return ahead > 0 && end > ahead && peek(end) == '/';
}

Amount Scanner::amount() {
  if (!at_number()) throw Refusal{quoted_ + " lacks a number", "start with a number in plain digits: 12.5"};
  std::string whole = digits();
  if (peek() == ',') refuse_comma();
  if (peek() == '/') return {fraction_after(whole), false, true};
  Amount result;
  if (peek() == '.') {
    ++at_;
    const std::string decimals = digits();
    if (decimals.empty()) throw Refusal{quoted_ + " ends a number with a point", "write 5 or 5.0"};
    if (peek() == ',') refuse_comma();
    whole += "." + decimals;
    result.decimal = true;
  }
  const bool exponent = peek() == 'e' && (is_digit(peek(1)) || peek(1) == '-' || peek(1) == '+');
  if (exponent || (peek() == 'x' && whole == "0")) refuse_exponent();
  if (peek() == '/')
    throw Refusal{quoted_ + " has a decimal in its fraction", "write a fraction of whole numbers: 3/8"};
  result.value = decimal_value(whole);
  size_t start = 0;
  if (result.decimal || !whole_fraction_follows(start)) return result;
  at_ = start;
  const double part = fraction_after(digits());
  if (part >= 1.0)
    throw Refusal{quoted_ + " has a fraction of one or more", "write the fraction below one: 4 1/4, not 3 5/4"};
  return {result.value + part, false, true};
}

std::string Scanner::unit() {
  skip_spaces();
  if (peek() == '"') return ++at_, "in";
  if (peek() == '\'') {
    const bool twice = peek(1) == '\'';
    at_ += twice ? 2 : 1;
    return twice ? "in" : "ft";
  }
  const size_t start = at_;
  while (is_letter(peek())) ++at_;
  const std::string word = text_.substr(start, at_ - start);
  if ((word == "ft" || word == "in" || word == "lb" || word == "oz") && peek() == '.') ++at_;
  return word;
}

void Scanner::finish() {
  if (at_end()) return;
  throw Refusal{quoted_ + " goes on after the measurement", "write one measurement and nothing after it"};
}

}  // namespace stowpath
