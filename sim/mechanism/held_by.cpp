#include "sim/mechanism/held_by.h"

#include <algorithm>
#include <cctype>
#include <iterator>

#include "sim/mechanism/hook_fastenings.h"
#include "sim/mechanism/rail_fastenings.h"
#include "sim/mechanism/rope_fastenings.h"
#include "sim/mechanism/stair_fastenings.h"

namespace stowpath {

namespace {

constexpr std::size_t kMostPlaces = 4;  // told one by one
constexpr std::size_t kLongest = 20;    // links from a part down to the building

void append(Fastenings& to, Fastenings more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

bool intact(const Fastenings& chain) {
  return std::all_of(chain.begin(), chain.end(), [](const Fastening& link) { return link.ok; });
}

// Of all ways on from a part, the first that is intact to its end; else the first of all.
Fastenings way_on(const Fastenings& links, const std::string& part, std::size_t most) {
  Fastenings best;
  for (const Fastening& link : links) {
    if (link.part != part || most == 0) continue;
    Fastenings way{link};
    if (link.ok) append(way, way_on(links, link.holder, most - 1));
    if (best.empty() || (intact(way) && !intact(best))) best = std::move(way);
    if (intact(best)) break;
  }
  return best;
}

bool same_trouble(const Fastening& a, const Fastening& b) {
  return a.kind == b.kind && a.how == b.how && a.remedy == b.remedy && a.place.empty() == b.place.empty();
}

std::string places_of(const Fastenings& like) {
  std::string places;
  for (std::size_t i = 0; i < std::min(like.size(), kMostPlaces); ++i) places += (i > 0 ? ", " : "") + like[i].place;
  return like.size() > kMostPlaces ? places + " and " + std::to_string(like.size() - kMostPlaces) + " more" : places;
}

std::string subject_of(const Fastenings& like) {
  const Fastening& first = like.front();
  const bool numbered = std::isdigit(static_cast<unsigned char>(first.kind.back())) != 0;
  if (like.size() == 1)
    return (numbered ? "" : "the ") + first.kind + (first.place.empty() ? "" : " " + first.place) + " is";
  return std::to_string(like.size()) + " " + first.kind + "s (" + places_of(like) + ") are";
}

BuildFault told(const Fastenings& like) {
  const Fastening& first = like.front();
  const std::string state = first.in_part ? " fastened only in part: " : " fastened to nothing: ";
  return {subject_of(like) + state + first.how + "; " + first.remedy, {first.kind, first.holder}};
}

}  // namespace

Fastenings held_by(const Scene& scene, const Model& model) {
  const HoldingView view{scene, model};
  Fastenings links = rail_fastenings(view);
  append(links, hook_fastenings(view));
  append(links, stair_fastenings(view));
  append(links, rope_fastenings(view));
  return links;
}

Fastenings chain_of(const Fastenings& links, const std::string& part) { return way_on(links, part, kLongest); }

std::vector<BuildFault> fastening_faults(const Fastenings& links) {
  std::vector<Fastenings> groups;
  for (const Fastening& link : links) {
    if (link.ok) continue;
    const auto like = std::find_if(groups.begin(), groups.end(),
                                   [&](const Fastenings& group) { return same_trouble(group.front(), link); });
    if (like == groups.end())
      groups.push_back({link});
    else
      like->push_back(link);
  }
  std::vector<BuildFault> faults;
  for (const Fastenings& group : groups) faults.push_back(told(group));
  return faults;
}

}  // namespace stowpath
