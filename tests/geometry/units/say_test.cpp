// Sentences of the bottom floor: parts at their places, and another language's where there is one.
#include "geometry/units/say.h"

#include <gtest/gtest.h>

namespace bolthole {
namespace {

/// A language in which parts come the other way round, and which has a form of its own for two.
std::string backward(const char* text, int count) {
    const std::string_view words(text);
    if (words == "%1 before %2") {
        return "%2 after %1";
    }
    if (words == "%n rows of %1") {
        return count == 2 ? "%1: a pair" : "%1: " + std::to_string(count) + " rows";
    }
    return "?";
}

class InBackward {
  public:
    InBackward() { setSayTranslator(&backward); }
    ~InBackward() { setSayTranslator(nullptr); }
    InBackward(const InBackward&) = delete;
    InBackward& operator=(const InBackward&) = delete;
};

TEST(Say, PutsPartsAtTheirPlaces) {
    EXPECT_EQ(say("nothing to add"), "nothing to add");
    EXPECT_EQ(say("%1 before %2", "one", std::string("other")), "one before other");
    EXPECT_EQ(say("%2 then %1 then %2", 1, std::size_t{2}), "2 then 1 then 2");
}

// Names are a person's own: one that looks like a place is a name all the same.
TEST(Say, LeavesAPartAsItIs) {
    EXPECT_EQ(say("%1 before %2", "%2", "100 %"), "%2 before 100 %");
    EXPECT_EQ(say("45 % of %1, %", "it"), "45 % of it, %");
    EXPECT_EQ(say("%1 and %3", "one"), "one and %3");
    EXPECT_EQ(say("%n stays without a count"), "%n stays without a count");
}

TEST(Say, CountsAreWrittenIn) {
    EXPECT_EQ(say("%n rows of %1", Count(12), "'%n'"), "12 rows of '%n'");
    EXPECT_EQ(say("%n rows of %1", Count(0), "it"), "0 rows of it");
}

TEST(Say, AnotherLanguageOrdersThePartsAndHasItsOwnPlurals) {
    const InBackward language;
    EXPECT_EQ(say("%1 before %2", "one", "other"), "other after one");
    EXPECT_EQ(say("%n rows of %1", Count(2), "it"), "it: a pair");
    EXPECT_EQ(say("%n rows of %1", Count(5), "it"), "it: 5 rows");
    EXPECT_EQ(say(phrase("%1 before %2"), "%1", "x"), "x after %1");
}

TEST(Say, IsEnglishAgainWithoutATranslator) {
    { const InBackward language; }
    EXPECT_EQ(say("%1 before %2", "one", "other"), "one before other");
}

}  // namespace
}  // namespace bolthole
