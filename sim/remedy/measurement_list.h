#pragma once

#include "sim/remedy/measurement.h"

namespace stowpath {

// The list of measurements as it grows, subject by subject.

/// Adds one that is a single number of the scene: `number(scene)` gives it.
template <class Number>
void add_length(std::vector<Measurement>& list, std::string key, std::string words, Number number) {
  list.push_back({std::move(key), std::move(words), false, [number](Scene& scene, double by) { number(scene) += by; }});
}
template <class Number>
void add_angle(std::vector<Measurement>& list, std::string key, std::string words, Number number) {
  list.push_back({std::move(key), std::move(words), true, [number](Scene& scene, double by) { number(scene) += by; }});
}

/// "stair.hinges[1].offset" of the parts "stair.hinges", 1 and ".offset".
std::string indexed(const std::string& list, std::size_t index, const std::string& key = "");

/// "hinge 2's offset", or "hinge's offset" where there is only one.
std::string of_several(const std::string& name, std::size_t index, std::size_t count);

/// The key itself where the file gives it, else `otherwise`.
std::string given_key(const Scene& scene, const std::string& key, const std::string& otherwise);

void add_site(const Scene& scene, std::vector<Measurement>& list);
void add_rail(const Scene& scene, std::vector<Measurement>& list);
void add_stair(const Scene& scene, std::vector<Measurement>& list);
void add_fittings(const Scene& scene, std::vector<Measurement>& list);
void add_hoist(const Scene& scene, std::vector<Measurement>& list);
void add_procedure(const Scene& scene, std::vector<Measurement>& list);

}  // namespace stowpath
