#include "sim/loads/rated.h"

#include <algorithm>
#include <cctype>

#include "sim/trade/figure.h"

namespace stowpath {

namespace {

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return out;
}

template <class Matches>
const Rating* least_rating(const Scene& scene, Matches matches) {
  const Rating* least = nullptr;
  for (const Rating& rating : scene.ratings)
    if (matches(lower(rating.what)) && (!least || allowed_by(rating) < allowed_by(*least))) least = &rating;
  return least;
}

// A rating that says one of these exactly is meant for that piece alone.
bool is_piece(const std::string& what) {
  for (const char* piece : {"fold line", "caster plate", "lock pin", "winch screws", "lead block", "lead sheave"})
    if (what == piece) return true;
  return false;
}

std::optional<SourceStatus> factor_status(const Rating& rating, double usual) {
  if (!rating.breaking || rating.factor) return std::nullopt;
  return usual == kUsualFactor ? SourceStatus::verified : SourceStatus::memory;
}

}  // namespace

const Rating* rating_of(const Scene& scene, std::initializer_list<std::string_view> names) {
  for (const std::string_view name : names) {
    const Rating* exact = least_rating(scene, [&](const std::string& what) { return what == name; });
    if (exact != nullptr) return exact;
  }
  for (const std::string_view name : names) {
    const Rating* part = least_rating(
        scene, [&](const std::string& what) { return !is_piece(what) && what.find(name) != std::string::npos; });
    if (part != nullptr) return part;
  }
  return nullptr;
}

double allowed_by(const Rating& rating, double usual) {
  return rating.breaking ? rating.force / rating.factor.value_or(usual) : rating.force;
}

void rate(HardwareItem& item, const Rating& rating, double usual) {
  const double factor = rating.factor.value_or(rating.breaking ? usual : 1.0);
  item.resistance = allowed_by(rating, usual);
  item.reserve = factor;
  item.status = factor_status(rating, usual);
  item.basis = "rated in the scene file";
  if (!rating.breaking) return;
  item.basis = "breaking strength of the scene file, over " + format_decimal(AtMost{factor}, 1);
  if (!rating.factor) item.basis += usual == kUsualFactor ? " (none given)" : " (none given, over people at rest)";
}

HardwareItem rated_item(const Scene& scene, const std::string& name, double load, const std::string& where,
                        std::initializer_list<std::string_view> names, double usual) {
  HardwareItem item;
  item.name = name;
  item.load = load;
  item.where = where;
  if (const Rating* rating = rating_of(scene, names))
    rate(item, *rating, usual);
  else
    item.note = "no rating given: compare the load with the maker's";
  return item;
}

void also(HardwareItem& item, const std::string& note) { item.note += (item.note.empty() ? "" : "; ") + note; }

}  // namespace stowpath
