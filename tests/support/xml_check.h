#pragma once

#include <string>
#include <string_view>

namespace stowpath::testing {

/// What keeps a text from being well-formed XML: tags that do not pair, bare `&` or `<`, attributes without quotes or
/// given twice, ids given twice. Empty where nothing does. It knows no entities but the five of XML.
std::string xml_fault(std::string_view text);

}  // namespace stowpath::testing
