// Rows and tables of plain numbers in the car file: Reader and Writer of app/carfile/car_file_io.h.
#include "app/carfile/car_file_io.h"
#include "geometry/units/say.h"

namespace bolthole::detail {

namespace {

Quantity quantityIn(const TableShape& shape, std::size_t column) {
    return shape.quantities.size() == 1 ? shape.quantities.front() : shape.quantities[column];
}

// The numbers of an array, at most shape.columns of them, or as many as there are quantities.
std::vector<double> readRow(const Json& node, const std::string& path, const TableShape& shape) {
    const std::size_t columns = shape.quantities.size() == 1 ? shape.columns : shape.quantities.size();
    const std::string expected = shape.quantities.size() == 1 ? say("an array of at most %1 numbers", columns)
                                                              : say("an array of %1 numbers", columns);
    const bool fits =
        node.is_array() && (shape.quantities.size() == 1 ? node.size() <= columns : node.size() == columns);
    if (!fits) {
        failExpected(path, expected, node);
    }
    std::vector<double> values;
    for (std::size_t column = 0; column < node.size(); ++column) {
        const std::optional<double> value = decode(node[column], quantityIn(shape, column));
        if (!value) {
            failExpected(pathOf(path, column), say("a number"), node[column]);
        }
        values.push_back(*value);
    }
    return values;
}

const Json* elementOf(const Json* array, std::size_t index) {
    return array != nullptr && array->is_array() && index < array->size() ? &(*array)[index] : nullptr;
}

Json writtenRow(const Json* old, const std::vector<double>& values, const TableShape& shape) {
    Json row = Json::array();
    for (std::size_t column = 0; column < values.size(); ++column) {
        row.push_back(keptOrEncoded(elementOf(old, column), values[column], quantityIn(shape, column)));
    }
    return row;
}

}  // namespace

void Reader::row(const char* key, std::vector<double>& values, Quantity quantity, std::size_t most) {
    values.clear();
    if (const Json* node = find(key)) {
        values = readRow(*node, pathOf(path_, key), {1, most, {quantity}});
    }
}

void Reader::table(const char* key, Table& rows, const TableShape& shape) {
    rows.clear();
    const Json* node = find(key);
    if (node == nullptr) {
        return;
    }
    const std::string path = pathOf(path_, key);
    if (!node->is_array() || node->size() > shape.rows) {
        failExpected(path, say("an array of at most %1 rows", shape.rows), *node);
    }
    for (std::size_t row = 0; row < node->size(); ++row) {
        rows.push_back(readRow((*node)[row], pathOf(path, row), shape));
    }
}

void Reader::check(const TableFault& fault) const {
    if (!fault.reason.empty()) {
        fail(path_ + "." + fault.path, fault.reason);
    }
}

void Writer::row(const char* key, const std::vector<double>& values, Quantity quantity, std::size_t most) {
    if (values.empty()) {
        remove(key);
    } else {
        put(key, writtenRow(member(source_, key), values, {1, most, {quantity}}));
    }
}

void Writer::table(const char* key, const Table& rows, const TableShape& shape) {
    if (rows.empty()) {
        remove(key);
        return;
    }
    const Json* old = member(source_, key);
    Json array = Json::array();
    for (std::size_t row = 0; row < rows.size(); ++row) {
        array.push_back(writtenRow(elementOf(old, row), rows[row], shape));
    }
    put(key, std::move(array));
}

}  // namespace bolthole::detail
