// Reads CSV after RFC 4180, quotes and line ends inside cells included.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace bolthole {

/// The cells of each row. Anything but CRLF at a row's end, or a quote out of place, is a failure.
inline std::vector<std::vector<std::string>> cellsOfCsv(const std::string& csv) {
    std::vector<std::vector<std::string>> rows;
    std::size_t at = 0;
    while (at < csv.size()) {
        std::vector<std::string>& row = rows.emplace_back();
        for (bool more = true; more;) {
            std::string& cell = row.emplace_back();
            if (at < csv.size() && csv[at] == '"') {
                for (++at; at < csv.size() && (csv[at] != '"' || csv.compare(at, 2, "\"\"") == 0); ++at) {
                    cell += csv[at];
                    at += csv[at] == '"' ? 1U : 0U;
                }
                ++at;
            } else {
                const std::size_t end = csv.find_first_of(",\"\r\n", at);
                cell = csv.substr(at, end - at);
                at = end;
            }
            more = at < csv.size() && csv[at] == ',';
            at += more ? 1U : 0U;
        }
        if (csv.compare(at, 2, "\r\n") != 0) {
            ADD_FAILURE() << "expected the row's end at " << at << ": " << csv.substr(at, 20);
            return rows;
        }
        at += 2;
    }
    return rows;
}

}  // namespace bolthole
