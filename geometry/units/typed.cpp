// Reading of typed numbers: readTyped() of geometry/units/text.h.
#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "geometry/units/say.h"
#include "geometry/units/text.h"
#include "geometry/units/typed_units.h"

namespace bolthole {

namespace {

constexpr std::size_t kLongestInput = 100;  // bytes; also keeps every number read finite

/// Signs that keyboards, phones and copied texts put in place of plain ones.
constexpr std::array<std::pair<std::string_view, std::string_view>, 25> kPlainSigns{{
    {"\u2212", "-"},      // minus
    {"\u2010", "-"},      // hyphen
    {"\u2011", "-"},      // non-breaking hyphen
    {"\u2013", "-"},      // en dash
    {"\u2032", "'"},      // prime
    {"\u2019", "'"},      // right single quotation mark
    {"\u2033", "\""},     // double prime
    {"\u201D", "\""},     // right double quotation mark
    {"/\u00B0", "/deg"},  // a degree sign under a slash
    {"\u00B0", " deg"},   // degree sign
    {"\u00B7", "-"},      // middle dot
    {"\u00BA", " deg"},   // masculine ordinal, next to it on many keyboards
    {"\u00A0", " "},      // no-break space
    {"\u202F", " "},      // narrow no-break space
    {"\u2009", " "},      // thin space
    {"\u2044", "/"},      // fraction slash
    {"\u215B", " 1/8"},  {"\u00BC", " 1/4"}, {"\u215C", " 3/8"}, {"\u00BD", " 1/2"}, {"\u215D", " 5/8"},
    {"\u00BE", " 3/4"},  {"\u215E", " 7/8"}, {"\t", " "},        {"\u2003", " "},  // em space
}};

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// The input with plain signs and lower-case letters, bytes of unknown signs left as they are.
std::string plain(std::string_view text) {
    std::string result;
    while (!text.empty()) {
        const auto found = std::ranges::find_if(
            kPlainSigns, [text](const auto& sign) { return text.starts_with(sign.first); });
        if (found != kPlainSigns.end()) {
            result += found->second;
            text.remove_prefix(found->first.size());
        } else {
            result += lower(text.front());
            text.remove_prefix(1);
        }
    }
    return result;
}

std::string quoted(std::string_view text) {
    return "'" + std::string(text) + "'";
}

/// Reads one typed number from left to right; the first thing that cannot be read becomes the problem.
class TypedReader {
  public:
    TypedReader(std::string text, Quantity quantity, Units units)
        : text_(std::move(text)), quantity_(quantity), units_(units) {}

    TypedNumber read();

  private:
    struct Amount {
        double value = 0;
        bool fraction = false;
    };

    bool refuse(std::string problem) {
        problem_ = std::move(problem);
        return false;
    }
    [[nodiscard]] std::string_view rest() const { return std::string_view(text_).substr(at_); }
    [[nodiscard]] char peek(std::size_t ahead = 0) const {
        return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0';
    }
    void skipSpaces();
    bool take(char c);
    [[nodiscard]] std::string_view takeWord();
    bool readAll(double& value);
    bool readSigned(double& value);
    bool readAmount(Amount& amount);
    bool readNumber(std::string_view& digits, double& value);
    bool readFraction(double& value);
    bool readFractionOf(std::string_view over, double overValue, double& value);
    bool readMixed(std::string_view wholeDigits, double whole, Amount& amount);
    bool readMeasure(double& value);
    bool readUnit(const TypedUnit*& unit);
    bool readInchesAfter(double feet, double& value);
    [[nodiscard]] bool atDivision() const;
    bool divide(double& value);
    bool refuseRest();

    std::string text_;
    std::size_t at_ = 0;
    Quantity quantity_;
    Units units_;
    std::string problem_;
};

void TypedReader::skipSpaces() {
    while (peek() == ' ') {
        ++at_;
    }
}

bool TypedReader::take(char c) {
    if (peek() != c) {
        return false;
    }
    ++at_;
    return true;
}

/// Letters, joined by / or - where more follow, or a single sign that stands for a unit.
std::string_view TypedReader::takeWord() {
    const std::size_t start = at_;
    if (peek() == '"' || peek() == '\'' || peek() == '%') {
        ++at_;
    } else {
        while (isLetter(peek()) || (at_ > start && (peek() == '/' || peek() == '-') && isLetter(peek(1)))) {
            ++at_;
        }
    }
    return std::string_view(text_).substr(start, at_ - start);
}

/// Digits with or without one decimal point.
bool TypedReader::readNumber(std::string_view& digits, double& value) {
    const std::size_t start = at_;
    std::size_t points = 0;
    while (isDigit(peek()) || peek() == '.') {
        points += peek() == '.' ? 1U : 0U;
        ++at_;
    }
    digits = std::string_view(text_).substr(start, at_ - start);
    if (points > 1) {
        return refuse(say("%1 has more than one decimal point", quoted(digits)));
    }
    if (digits.size() == points) {
        at_ = start;
        return refuse(say("%1 is not a number: type %2", quoted(rest()), targetWords(quantity_)));
    }
    std::from_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
    return true;
}

/// What stands over the slash is read; reads the slash and what stands under it.
bool TypedReader::readFractionOf(std::string_view over, double overValue, double& value) {
    skipSpaces();
    if (!take('/')) {
        return refuse(
            say("two numbers side by side: type a fraction such as 12 3/8, or a decimal such as 12.375"));
    }
    skipSpaces();
    std::string_view under;
    double underValue = 0;
    if (!readNumber(under, underValue)) {
        return refuse(say("a number is missing after the '/'"));
    }
    if (over.find('.') != std::string_view::npos || under.find('.') != std::string_view::npos) {
        return refuse(say("a fraction is made of whole numbers, such as 3/8"));
    }
    if (underValue <= 0) {
        return refuse(say("a fraction over 0 has no value"));
    }
    value = overValue / underValue;
    return true;
}

bool TypedReader::readFraction(double& value) {
    std::string_view over;
    double overValue = 0;
    return readNumber(over, overValue) && readFractionOf(over, overValue, value);
}

/// The fraction after a whole number: "12 3/8".
bool TypedReader::readMixed(std::string_view wholeDigits, double whole, Amount& amount) {
    double fraction = 0;
    if (!readFraction(fraction)) {
        return false;
    }
    if (wholeDigits.find('.') != std::string_view::npos) {
        return refuse(say("type either decimals or a fraction, not both"));
    }
    if (fraction >= 1) {
        return refuse(say("the fraction after a whole number must be less than 1"));
    }
    amount = {whole + fraction, true};
    return true;
}

/// "12.375", "3/8", "12 3/8" or "12-3/8".
bool TypedReader::readAmount(Amount& amount) {
    std::string_view digits;
    double number = 0;
    if (!readNumber(digits, number)) {
        return false;
    }
    const bool dashed = peek() == '-' && isDigit(peek(1));
    skipSpaces();
    if (dashed || isDigit(peek()) || peek() == '.') {
        at_ += dashed ? 1 : 0;
        return readMixed(digits, number, amount);
    }
    if (peek() == '/' && !atDivision()) {
        amount.fraction = true;
        return readFractionOf(digits, number, amount.value);
    }
    amount = {number, false};
    return true;
}

bool TypedReader::readUnit(const TypedUnit*& unit) {
    const std::string_view word = takeWord();
    if (word.empty()) {
        return refuseRest();
    }
    if (word == "e") {
        return refuse(say("write the number out, without an exponent"));
    }
    unit = findUnit(word, quantity_);
    if (unit == nullptr) {
        return refuse(say("%1 is not a unit known here: type %2", quoted(word), targetWords(quantity_)));
    }
    if (unit->quantity != quantity_) {
        return refuse(say("%1 does not fit here: type %2", quoted(word), targetWords(quantity_)));
    }
    if (isLetter(word.front())) {
        take('.');  // the period of an abbreviation: "12 in."
    }
    return true;
}

/// A slash with spaces around it divides: "26 3/4 / 2", half a diameter. Within a mixed number, "12 3 / 8",
/// it is the fraction's.
bool TypedReader::atDivision() const {
    return at_ > 0 && text_[at_ - 1] == ' ' && peek() == '/' && peek(1) == ' ';
}

bool TypedReader::divide(double& value) {
    take('/');
    skipSpaces();
    std::string_view digits;
    double by = 0;
    if (!isDigit(peek()) && peek() != '.') {
        return refuse(say("a number is missing after the '/'"));
    }
    if (!readNumber(digits, by)) {
        return false;
    }
    if (by <= 0) {
        return refuse(say("a number divided by 0 has no value"));
    }
    value /= by;
    return true;
}

/// What may follow feet: nothing, or inches as in "1 ft 2 1/2 in" or, as on drawings, "1'-2 1/2\"".
bool TypedReader::readInchesAfter(double feet, double& value) {
    if (peek() == '-' && isDigit(peek(1))) {
        ++at_;
    }
    skipSpaces();
    Amount inches;
    if (!rest().empty() && !atDivision()) {
        if (!isDigit(peek()) && peek() != '.') {
            return refuseRest();
        }
        if (!readAmount(inches)) {
            return false;
        }
        skipSpaces();
        const TypedUnit* unit = findUnit(takeWord(), Quantity::length);
        if (unit == nullptr || !unit->sameSize(kInchUnit)) {
            return refuse(say("after feet come inches: type 1 ft 2 1/2 in"));
        }
        take('.');
    }
    value = (feet * 12 + inches.value) * kInchUnit.over / kInchUnit.under;
    return true;
}

/// A number with or without a unit, SI.
bool TypedReader::readMeasure(double& value) {
    Amount amount;
    if (!readAmount(amount)) {
        return false;
    }
    skipSpaces();
    const TypedUnit* unit = &shownTypedUnit(quantity_, units_);
    const bool bare = rest().empty() || atDivision();
    if (bare && amount.fraction && unit->sameSize(kMillimetreUnit)) {
        return refuse(say("a fraction of an inch or of a millimeter? Add in or mm"));
    }
    if (!bare && !readUnit(unit)) {
        return false;
    }
    if (unit->sameSize(kFootUnit)) {
        return readInchesAfter(amount.value, value);
    }
    value = amount.value * unit->over / unit->under;
    return true;
}

bool TypedReader::readSigned(double& value) {
    const bool negative = take('-');
    if (!negative) {
        take('+');
    }
    skipSpaces();
    if (!readMeasure(value)) {
        return false;
    }
    value = negative && value > 0 ? -value : value;
    return true;
}

bool TypedReader::refuseRest() {
    return refuse(say("%1 is left over: type %2", quoted(rest()), targetWords(quantity_)));
}

bool TypedReader::readAll(double& value) {
    if (text_.size() > kLongestInput) {
        return refuse(say("too long for a number"));
    }
    if (text_.find(',') != std::string::npos) {
        return refuse(say("a comma could mean thousands or decimals: type 12.5 or 12 1/2"));
    }
    skipSpaces();
    if (rest().empty()) {
        return refuse(say("type %1", targetWords(quantity_)));
    }
    if (!readSigned(value)) {
        return false;
    }
    skipSpaces();
    if (atDivision() && !divide(value)) {
        return false;
    }
    skipSpaces();
    return rest().empty() || refuseRest();
}

TypedNumber TypedReader::read() {
    double value = 0;
    if (readAll(value)) {
        return {value, {}};
    }
    return {std::nullopt, problem_};
}

}  // namespace

TypedNumber readTyped(std::string_view text, Quantity quantity, Units units) {
    if (text.size() > kLongestInput) {
        return {std::nullopt, say("too long for a number")};
    }
    return TypedReader(plain(text), quantity, units).read();
}

}  // namespace bolthole
