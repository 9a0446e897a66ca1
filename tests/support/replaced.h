// A text with one place of it changed.
#pragma once

#include <gtest/gtest.h>

#include <string>

namespace bolthole {

/// `text` with the first `from` made `to`; there must be one.
inline std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    if (at == std::string::npos) {
        ADD_FAILURE() << "nothing to replace: " << from;
        return text;
    }
    return text.replace(at, from.size(), to);
}

}  // namespace bolthole
