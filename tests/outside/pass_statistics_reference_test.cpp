// The statistics of passes against certified values and worked examples of others.
//
// NIST StRD: Statistical Reference Datasets, National Institute of Standards and Technology. The values were
// read where others quote the data sets' own files; what is recalled says so, and is then held against
// itself.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

#include "geometry/passes/statistics.h"

namespace bolthole {
namespace {

/// Digits that two numbers share, as the StRD counts them.
double sharedDigits(double found, double certified) {
    const double error = std::abs(found - certified) / std::abs(certified);
    return error == 0 ? 16.0 : -std::log10(error);
}

// StRD univariate, Michelso: Michelson's 100 determinations of the speed of light in air, in 1000 km/s
// (Dorsey 1944).
const std::vector<double> kMichelson{
    299.85, 299.74, 299.90, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300.00, 299.98, 299.93,
    299.65, 299.76, 299.81, 300.00, 300.00, 299.96, 299.96, 299.96, 299.94, 299.96, 299.94, 299.88, 299.80,
    299.85, 299.88, 299.90, 299.84, 299.83, 299.79, 299.81, 299.88, 299.88, 299.83, 299.80, 299.79, 299.76,
    299.80, 299.88, 299.88, 299.88, 299.86, 299.72, 299.72, 299.62, 299.86, 299.97, 299.95, 299.88, 299.91,
    299.85, 299.87, 299.84, 299.84, 299.85, 299.84, 299.84, 299.84, 299.89, 299.81, 299.81, 299.82, 299.80,
    299.77, 299.76, 299.74, 299.75, 299.76, 299.91, 299.92, 299.89, 299.86, 299.88, 299.72, 299.84, 299.85,
    299.85, 299.78, 299.89, 299.84, 299.78, 299.81, 299.76, 299.81, 299.79, 299.81, 299.82, 299.85, 299.87,
    299.87, 299.81, 299.74, 299.81, 299.94, 299.95, 299.80, 299.81, 299.87};

TEST(CertifiedUnivariate, Michelso) {
    const Sample sample = sampleOf(kMichelson);
    EXPECT_EQ(sample.count, 100);
    EXPECT_GT(sharedDigits(sample.mean, 299.852400000000), 14);
    EXPECT_GT(sharedDigits(sample.deviation, 0.0790105478190518), 12);
}

// StRD univariate, NumAcc1: 10000001, 10000003, 10000002: mean 10000002, standard deviation 1, both exact.
TEST(CertifiedUnivariate, NumAcc1) {
    const Sample sample = sampleOf(std::array{10000001.0, 10000003.0, 10000002.0});
    EXPECT_EQ(sample.mean, 10000002.0);
    EXPECT_EQ(sample.deviation, 1.0);
}

/// The first value of a NumAcc set, then low and high in turns 500 times (the build of the sets: from
/// memory).
std::vector<double> inTurns(double first, double low, double high) {
    std::vector<double> values{first};
    for (int pair = 0; pair < 500; ++pair) {
        values.push_back(low);
        values.push_back(high);
    }
    return values;
}

// StRD univariate, NumAcc2 to 4: 1001 values 1.2 then 1.1, 1.3 in turns, and the same on top of 1000000 and
// 10000000: standard deviation 0.1, exact. The decimals themselves are rounded to doubles on the way in,
// which costs the later sets digits: 9 at least are left of NumAcc3 and 8 of NumAcc4.
TEST(CertifiedUnivariate, NumAcc2To4) {
    const Sample second = sampleOf(inTurns(1.2, 1.1, 1.3));
    EXPECT_GT(sharedDigits(second.mean, 1.2), 14);
    EXPECT_GT(sharedDigits(second.deviation, 0.1), 13);
    const Sample third = sampleOf(inTurns(1000000.2, 1000000.1, 1000000.3));
    EXPECT_GT(sharedDigits(third.mean, 1000000.2), 14);
    EXPECT_GT(sharedDigits(third.deviation, 0.1), 9);
    const Sample fourth = sampleOf(inTurns(10000000.2, 10000000.1, 10000000.3));
    EXPECT_GT(sharedDigits(fourth.mean, 10000000.2), 14);
    EXPECT_GT(sharedDigits(fourth.deviation, 0.1), 8);
}

// StRD analysis of variance, AtmWtAg: atomic weight of silver by two instruments (Powell, Murphy & Gramlich
// 1982).
const std::vector<std::vector<double>> kSilver{
    {107.8681568, 107.8681465, 107.8681572, 107.8681785, 107.8681446, 107.8681903, 107.8681526, 107.8681494,
     107.8681616, 107.8681587, 107.8681519, 107.8681486, 107.8681419, 107.8681569, 107.8681508, 107.8681672,
     107.8681385, 107.8681518, 107.8681662, 107.8681424, 107.8681360, 107.8681333, 107.8681610, 107.8681477},
    {107.8681079, 107.8681344, 107.8681513, 107.8681197, 107.8681604, 107.8681385, 107.8681642, 107.8681365,
     107.8681151, 107.8681082, 107.8681517, 107.8681448, 107.8681198, 107.8681482, 107.8681334, 107.8681609,
     107.8681101, 107.8681512, 107.8681469, 107.8681360, 107.8681254, 107.8681261, 107.8681450, 107.8681368}};

TEST(CertifiedAnova, AtmWtAg) {
    const Answer<Scatter> scatter = pooledScatter(kSilver);
    ASSERT_TRUE(scatter);
    EXPECT_EQ(scatter->freedom, 46);
    EXPECT_GT(sharedDigits(scatter->deviation, 1.51048314446410E-05), 9) << "residual standard deviation";
}

// With two groups of one size t squared is F; the certified F is 15.9467335677930.
TEST(CertifiedAnova, AtmWtAgByTheDifferenceOfItsTwoGroups) {
    const Answer<Difference> difference = welchDifference(sampleOf(kSilver[0]), sampleOf(kSilver[1]));
    ASSERT_TRUE(difference);
    const double t = difference->change / difference->standardError;
    // Of a difference of 2e-5 between doubles near 108 nine digits are left, of its square a little less.
    EXPECT_GT(sharedDigits(t * t, 1.59467335677930E+01), 8);
    EXPECT_TRUE(difference->apart());
}

// StRD analysis of variance, SiRstv: resistivity of silicon by five instruments (Ehrstein & Croarkin). The
// data are from memory; that they give every certified figure shows them right.
TEST(CertifiedAnova, SiRstv) {
    const std::vector<std::vector<double>> resistivity{{196.3052, 196.1240, 196.1890, 196.2569, 196.3403},
                                                       {196.3042, 196.3825, 196.1669, 196.3257, 196.0422},
                                                       {196.1303, 196.2005, 196.2889, 196.0343, 196.1811},
                                                       {196.2795, 196.1748, 196.1494, 196.1485, 195.9885},
                                                       {196.2119, 196.1051, 196.1850, 196.0052, 196.2090}};
    const Answer<Scatter> scatter = pooledScatter(resistivity);
    ASSERT_TRUE(scatter);
    EXPECT_EQ(scatter->freedom, 20);
    EXPECT_GT(sharedDigits(scatter->deviation, 1.04076068334656E-01), 12);
    double between = 0;
    double mean = 0;
    for (const std::vector<double>& group : resistivity) {
        mean += sampleOf(group).mean / 5;
    }
    for (const std::vector<double>& group : resistivity) {
        between += 5 * std::pow(sampleOf(group).mean - mean, 2);
    }
    EXPECT_GT(sharedDigits(between / 4 / std::pow(scatter->deviation, 2), 1.18046237440255E+00), 10);
}

// StRD linear regression, Norris: ozone monitors, y on x (Norris, NIST).
TEST(CertifiedLine, Norris) {
    const std::array x{0.2, 337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4,
                       0.6, 775.5, 666.9, 338.0, 447.5, 11.6,  556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
                       0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5};
    const std::array y{0.1, 338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
                       0.1, 778.1, 668.8, 339.3, 448.9, 10.8,  557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
                       0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2};
    std::vector<DriftPoint> points;
    for (std::size_t at = 0; at < x.size(); ++at) {
        points.push_back({x[at], y[at], 0});
    }
    const Answer<Drift> drift = driftOf(points);
    ASSERT_TRUE(drift);
    EXPECT_EQ(drift->freedom, 34);
    EXPECT_GT(sharedDigits(drift->slope, 1.00211681802045), 13);
    EXPECT_GT(sharedDigits(drift->standardError, 0.429796848199937E-03), 10);
}

// NIST/SEMATECH e-Handbook 1.3.5.2, heat flow meter: 195 values, mean 9.261460, standard deviation 0.022789:
// 95 % limits 9.258242 and 9.264679 (read as others quote it).
TEST(HandbookExample, LimitsOfAMean) {
    const Answer<Interval> interval = meanInterval(Sample{195, 9.261460, 0.022789});
    ASSERT_TRUE(interval);
    EXPECT_NEAR(interval->low, 9.258242, 1e-6);
    EXPECT_NEAR(interval->high, 9.264679, 1e-6);
    EXPECT_EQ(interval->freedom, 194);
}

// The same example's table of confidence coefficients: 99 % limits 9.25721 and 9.26571 (Boost.Math,
// Calculating confidence intervals on the mean; from memory).
TEST(HandbookExample, LimitsOfAMeanAtAnotherConfidence) {
    const Answer<Interval> interval = meanInterval(Sample{195, 9.261460, 0.022789}, 0.99);
    ASSERT_TRUE(interval);
    EXPECT_NEAR(interval->low, 9.25721, 1e-5);
    EXPECT_NEAR(interval->high, 9.26571, 1e-5);
}

// NAG Library, g07cac, Example Program Results (read): 4 values of mean 25, standard deviation 0.8185, and 8
// of mean 21, standard deviation 4.208; no assumption about the variances: t 2.5922, 7.9925 degrees of
// freedom, limits of the difference 0.4410 and 7.5590.
TEST(LibraryExample, WelchsDifference) {
    const Answer<Difference> difference = welchDifference(Sample{8, 21, 4.208}, Sample{4, 25, 0.8185});
    ASSERT_TRUE(difference);
    EXPECT_EQ(difference->change, 4);
    EXPECT_NEAR(difference->change / difference->standardError, 2.5922,
                4e-4);  // the deviations are printed to four digits
    EXPECT_NEAR(difference->freedom, 7.9925, 2e-3);
    EXPECT_NEAR(difference->low, 0.4410, 1e-3);
    EXPECT_NEAR(difference->high, 7.5590, 1e-3);
    EXPECT_TRUE(difference->apart());
}

// e-Handbook 7.3.1, times of assembly by an old and a new process: means 36.0909 and 32.2222, standard
// deviations 4.9082 and 2.5386, t 2.2694, and 15.5 degrees of freedom, taken as 15 (all from memory; the
// means and deviations follow from the data).
TEST(HandbookExample, TwoProcesses) {
    const Sample old = sampleOf(std::array{32.0, 37.0, 35.0, 28.0, 41.0, 44.0, 35.0, 31.0, 34.0, 38.0, 42.0});
    const Sample improved = sampleOf(std::array{36.0, 31.0, 30.0, 31.0, 34.0, 36.0, 29.0, 32.0, 31.0});
    EXPECT_NEAR(old.mean, 36.0909, 1e-4);
    EXPECT_NEAR(old.deviation, 4.9082, 1e-4);
    EXPECT_NEAR(improved.mean, 32.2222, 1e-4);
    EXPECT_NEAR(improved.deviation, 2.5386, 1e-4);
    const Answer<Difference> difference = welchDifference(old, improved);
    ASSERT_TRUE(difference);
    EXPECT_NEAR(-difference->change / difference->standardError, 2.2694, 1e-4);
    EXPECT_NEAR(difference->freedom, 15.5, 0.05);
}

// e-Handbook 7.2.2.2: to find a shift of one standard deviation with a one-sided risk of 0.05 and a chance of
// 0.90, normal quantiles give 8.567, so 9, and t with 8 degrees of freedom 10.6, so 11 (read). A one-sided
// risk of 0.05 is a two-sided confidence of 0.90. One step on, t with 10 degrees of freedom asks for 10.1: 11
// it stays.
TEST(HandbookExample, SampleSize) {
    const Answer<int> size = repeatsToTell(1, 1, {.confidence = 0.90, .power = 0.90, .groups = 1});
    ASSERT_TRUE(size);
    EXPECT_EQ(*size, 11);
}

// Two groups and many repeats: t is nearly normal, and 2 (1.959964 + 1.281552)^2 (s/d)^2 repeats each are
// asked for: 525.4 for a difference of a fifth of the scatter (normal quantiles; any table).
TEST(SampleSize, OfTwoGroupsNearsTheNormalOne) {
    const Answer<int> size = repeatsToTell(1, 0.2);
    ASSERT_TRUE(size);
    EXPECT_GE(*size, 526);
    EXPECT_LE(*size, 528);
}

}  // namespace
}  // namespace bolthole
