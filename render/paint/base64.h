#pragma once

#include <span>
#include <string>

namespace stowpath {

/// Bytes as letters, for data: addresses. Source: RFC 4648, section 4.
std::string base64(std::span<const unsigned char> bytes);

}  // namespace stowpath
