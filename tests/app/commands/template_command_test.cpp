// The template command: exit codes, standard error, and that it needs neither display nor application object.
#include "app/commands/template_command.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "app/carfile/car_file.h"
#include "tests/support/plain_car.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

namespace fs = std::filesystem;
using test::bytesOf;
using test::kWagonFile;
using testing::AllOf;
using testing::HasSubstr;
using testing::StartsWith;

// What poppler's pdftotext reads in a file.
std::string textOf(const std::string& file) {
    std::string text;
    std::FILE* pipe = ::popen(("pdftotext '" + file + "' -").c_str(), "r");
    EXPECT_NE(pipe, nullptr);
    std::array<char, 4096> bytes{};
    for (std::size_t count = 1; pipe != nullptr && count > 0;) {
        count = std::fread(bytes.data(), 1, bytes.size(), pipe);
        text.append(bytes.data(), count);
    }
    EXPECT_EQ(::pclose(pipe), 0);
    return text;
}

class TemplateCommand : public test::BareCommand {
  protected:
    ExitCode run(const std::vector<std::string>& words) { return runAs("template", words); }
    [[nodiscard]] std::string pdf() const { return file("template.pdf"); }
    std::string saved(const Car& car) {
        const std::string name = file("car.bolt.json");
        std::ofstream(name) << writeCar(car, nullptr);
        return name;
    }
};

TEST_F(TemplateCommand, WritesThePdfAndNothingElse) {
    for (const char* paper : {"letter", "tabloid", "a4", "a3"}) {
        for (const char* end : {"chassis", "axle"}) {
            EXPECT_EQ(run({kWagonFile, "--link", "lower", "--end", end, "-o", pdf(), "--paper", paper}),
                      ExitCode::done)
                << err_;
            EXPECT_EQ(out_, "");
            EXPECT_EQ(err_, "");
            EXPECT_THAT(bytesOf(pdf()), StartsWith("%PDF-"));
        }
    }
}

TEST_F(TemplateCommand, BearsTheNameOfTheBracket) {
    ASSERT_EQ(run({kWagonFile, "--link=#2", "--end", "axle", "-o", pdf()}), ExitCode::done) << err_;
    EXPECT_THAT(textOf(pdf()), HasSubstr("upper, axle bracket: drilling template, 1:1"));
}

TEST_F(TemplateCommand, TakesPaperFromTheUnits) {
    const std::vector<std::string> words{kWagonFile, "--link", "lower", "--end", "axle", "-o", pdf()};
    ASSERT_EQ(run(words), ExitCode::done) << err_;
    EXPECT_THAT(bytesOf(pdf()), HasSubstr("612.000000"));
    std::vector<std::string> metric = words;
    metric.insert(metric.end(), {"--units", "metric"});
    ASSERT_EQ(run(metric), ExitCode::done) << err_;
    EXPECT_THAT(bytesOf(pdf()), HasSubstr("595.000000"));
}

TEST_F(TemplateCommand, RefusesBadUse) {
    const auto refused = [&](const std::vector<std::string>& words, const std::string& why) {
        EXPECT_EQ(run(words), ExitCode::badUse) << why;
        EXPECT_EQ(out_, "");
        EXPECT_THAT(err_, AllOf(StartsWith("bolthole: "), HasSubstr(why)));
        EXPECT_EQ(std::ranges::count(err_, '\n'), 1) << err_;
        EXPECT_FALSE(fs::exists(pdf()));
    };
    refused({kWagonFile, "--link", "lower", "--end", "axle"}, "-o: no file given");
    refused({kWagonFile, "--end", "axle", "-o", pdf()}, "--link: no link given");
    refused({kWagonFile, "--link", "lower", "-o", pdf()}, "--end: no end of the link given");
    refused({kWagonFile, "--link", "lower", "--end", "frame", "-o", pdf()},
            "--end: expected chassis or axle");
    refused({kWagonFile, "--link", "middle", "--end", "axle", "-o", pdf()},
            "no link is called 'middle', expected 'lower' or 'upper'");
    refused({kWagonFile, "--link", "#99", "--end", "axle", "-o", pdf()}, "no link #99, expected #1 to #");
    refused({kWagonFile, "--link", "#one", "--end", "axle", "-o", pdf()}, "no link #one");
}

TEST_F(TemplateCommand, ANameOfSeveralLinksAsksWhich) {
    Car car = plainCar();
    car.links[1].name = "lower";
    const std::string name = saved(car);
    EXPECT_EQ(run({name, "--link", "lower", "--end", "axle", "-o", pdf()}), ExitCode::badUse);
    EXPECT_THAT(err_, HasSubstr("several links are called 'lower', expected #1 or #2"));
    EXPECT_EQ(run({name, "--link", "#2", "--end", "axle", "-o", pdf()}), ExitCode::done) << err_;
}

TEST_F(TemplateCommand, RefusesWhatNoPaperHolds) {
    Car car = plainCar();
    car.links[0].axle.plate = Plate{
        .corners = {{-9, 0}, {9, 0}, {9, 9}}, .holeDiameter = 0.016, .edgeDistance = 0.02, .holeSpacing = 2};
    EXPECT_EQ(run({saved(car), "--link", "lower", "--end", "axle", "-o", pdf()}), ExitCode::badUse);
    EXPECT_THAT(err_, AllOf(HasSubstr("links[0].axle: "), HasSubstr("No paper is large enough")));
}

}  // namespace
}  // namespace bolthole
