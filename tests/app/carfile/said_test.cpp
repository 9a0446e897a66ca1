// Every sentence about a car can be put into another language whole: in one that has no words at all, nothing
// is left but places, names, numbers and units.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "geometry/car/starting_numbers.h"
#include "geometry/checks/fixes.h"
#include "geometry/checks/warnings.h"
#include "geometry/edits/edit.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"
#include "tests/support/demo_car.h"

namespace bolthole {
namespace {

/// The text without its words: its places one after the other, else a star.
std::string wordless(const char* text, int count) {
    const std::string_view words(text);
    std::string places;
    for (std::size_t at = 0; at + 1 < words.size(); ++at) {
        if (words[at] == '%' && words[at + 1] >= '1' && words[at + 1] <= '9') {
            places += std::string(" %") + words[at + 1];
        } else if (words[at] == '%' && words[at + 1] == 'n' && count >= 0) {
            places += " " + std::to_string(count);
        }
    }
    return places.empty() ? "*" : places;  // an empty reason would be none
}

class Said : public testing::TestWithParam<const char*> {
  protected:
    Said() { setSayTranslator(&wordless); }
    ~Said() override { setSayTranslator(nullptr); }

    void SetUp() override {
        setSayTranslator(nullptr);
        car_ = demoCar(GetParam());
        setSayTranslator(&wordless);
        // Names without letters are told from words.
        for (Link& link : car_.links) {
            link.name = "7";
            for (const End end : {End::chassis, End::axle}) {
                for (Hole& hole : link.bracket(end).holes) {
                    hole.name = "8";
                }
            }
        }
        for (SuspensionPart& part : car_.springs) {
            part.name = "9";
        }
        for (EnteredBallast& load : car_.ballast) {
            load.name = "6";
        }
    }

    /// Notes a sentence that holds a word of three letters which is no unit.
    void take(const std::string& sentence) {
        static const std::set<std::string> kUnits{"rpm", "psi", "kPa", "gal", "deg"};
        ++taken_;
        std::string word;
        for (const char c : sentence + ' ') {
            if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) {
                word += c;
                continue;
            }
            if (word.size() > 2 && !kUnits.contains(word)) {
                left_.insert(sentence);
            }
            word.clear();
        }
    }

    /// What is said of the car once a number of it is another.
    void takeChanged(const FieldId& id, double value) {
        const Edit edit = SetNumber{id, value};
        take(describe(edit, car_));
        const EditResult result = apply(car_, edit);
        take(result.refusal);
        if (result.refusal.empty()) {
            for (const Warning& warning : findWarnings(result.car)) {
                take(sentence(warning.finding));
                const std::optional<Fix> fix = certainFix(result.car, warning);
                take(fix ? fix->words : "");
            }
        }
    }

    Car car_{};
    std::set<std::string> left_{};
    int taken_ = 0;
};

TEST_P(Said, WarningsRefusalsAndEditsHoldNoWordThatCannotBeTranslated) {
    const std::vector<FieldId> numbers = measurableNumbers(car_);
    ASSERT_GT(numbers.size(), 40U);
    for (const FieldId& id : numbers) {
        const double value = numberAt(car_, id).value_or(1);
        for (const double other : {-value, 1e12}) {
            take(describe(SetNumber{id, other}, car_));
            take(apply(car_, SetNumber{id, other}).refusal);
        }
        // Every third alone, as computing what is wrong takes its time.
        if ((&id - numbers.data()) % 3 != 0) {
            continue;
        }
        takeChanged(id, value * 3);
        takeChanged(id, -value);
        FieldId uncertainty = id;
        uncertainty.uncertainty = true;
        takeChanged(uncertainty, 0.1);
        take(describe(ClearNumber{id}, car_));
        take(apply(car_, ClearNumber{id}).refusal);
    }
    EXPECT_GT(taken_, 400);
    EXPECT_THAT(left_, testing::IsEmpty());
}

TEST_P(Said, WhatIsTypedIsRefusedWithoutEnglish) {
    for (int quantity = 0; quantity <= static_cast<int>(Quantity::pressure); ++quantity) {
        for (const char* typed :
             {"", "1/0", "1,5", "3 4", "1.2.3", "9 q", "5 in 3 mm", "1e5", "12 3/2", "7 /"}) {
            take(readTyped(typed, static_cast<Quantity>(quantity), Units::inch).problem);
        }
    }
    EXPECT_GT(taken_, 100);
    EXPECT_THAT(left_, testing::IsEmpty());
}

INSTANTIATE_TEST_SUITE_P(Demos, Said,
                         testing::Values("long-roof-wagon", "light-coupe", "notch-sedan", "short-pickup",
                                         "gully-roadster"));

/// Why a car file is refused whose text `from` is `to`.
std::string refusalOf(std::string file, const std::string& from, const std::string& to) {
    const std::size_t at = file.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return readCar(file.replace(at, from.size(), to)).problem.reason;
}

TEST(SaidOfFiles, TheReaderRefusesWithoutEnglish) {
    const FileBytes wagon = readCarBytes(BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json");
    ASSERT_EQ(wagon.problem, "");
    setSayTranslator(&wordless);
    const std::vector<std::string> refusals{
        refusalOf(wagon.bytes, "\"wheelbase\":", "\"wheelbase\": {}, \"other\":"),
        refusalOf(wagon.bytes, "\"wheelbase\":", "\"other\":"),
        refusalOf(wagon.bytes, "\"wheelbase\":", "\"wheelbase\": -4, \"other\":"),
        refusalOf(wagon.bytes, "\"links\":", "\"links\": 5, \"other\":"),
        refusalOf(wagon.bytes, "\"units\":", "\"units\": 5, \"other\":"),
        refusalOf(wagon.bytes, "\"title\":", "\"title\": [1], \"other\":"),
        refusalOf(wagon.bytes, "\"at\":", "\"at\": [1, 2], \"other\":"),
        refusalOf(wagon.bytes, "\"at\":", "\"at\": [1, 2, []], \"other\":"),
        refusalOf(wagon.bytes, "\"wheelbase\":", "\"wheelbase\": 1, \"wheelbase\":"),
        readCar(std::string(200, '[')).problem.reason};
    setSayTranslator(nullptr);
    for (std::size_t at = 0; at < refusals.size(); ++at) {
        const std::string& refusal = refusals[at];
        // Quoted is what the file's words must be, or are.
        const std::string bare = std::regex_replace(refusal, std::regex("\"[^\"]*\""), "");
        EXPECT_THAT(bare, testing::Not(testing::ContainsRegex("[A-Za-z][A-Za-z][A-Za-z]")));
        EXPECT_NE(refusal, "") << at;
    }
}

}  // namespace
}  // namespace bolthole
