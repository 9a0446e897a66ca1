// Statistics of few repeats: means, scatter, differences, how many more would tell, and drift. Knows nothing
// of cars. Sums are ours; quantiles come from Boost.Math.
//
// Source throughout: NIST/SEMATECH e-Handbook of Statistical Methods, by section. 7.2.2.2 and 1.3.5.3 were
// read; the other sections' numbers are from memory. All of it takes repeats to be independent and normally
// scattered.
#pragma once

#include <span>
#include <vector>

#include "geometry/passes/answer.h"

namespace bolthole {

/// The share of intervals that hold the truth, where nobody asks for another.
inline constexpr double kUsualConfidence = 0.95;
/// How surely a difference that is there is to be found, where nobody asks for another.
inline constexpr double kUsualPower = 0.90;

/// Repeats, in short.
struct Sample {
    int count = 0;
    double mean = 0;       ///< 0 without repeats
    double deviation = 0;  ///< standard, with count - 1 below it; 0 for fewer than two
};
/// Mean and standard deviation (e-Handbook 1.3.5.1 and 1.3.5.6), the mean taken off before squaring.
[[nodiscard]] Sample sampleOf(std::span<const double> values);

/// How far repeats of one thing lie apart, from several groups of them.
struct Scatter {
    double deviation = 0;  ///< standard, of a single run
    double freedom = 0;    ///< degrees of freedom it rests on
};
/// Pooled standard deviation of the groups: the root of the sum of squares within them over its degrees of
/// freedom, which is the residual standard deviation of a one-way analysis of variance (e-Handbook 7.4.3.3).
/// Groups of one tell nothing. No answer where no group has two.
[[nodiscard]] Answer<Scatter> pooledScatter(std::span<const std::vector<double>> groups);

/// A value between two limits.
struct Interval {
    double middle = 0;
    double low = 0;
    double high = 0;
    double freedom = 0;
};
/// Where the true mean lies, by the sample's own scatter: mean -+ t s / sqrt(n) (e-Handbook 1.3.5.2). No
/// answer for fewer than two.
[[nodiscard]] Answer<Interval> meanInterval(const Sample& sample, double confidence = kUsualConfidence);
/// The same by a scatter known from elsewhere, with its degrees of freedom; one repeat is enough. No answer
/// without any.
[[nodiscard]] Answer<Interval> meanInterval(const Sample& sample, const Scatter& scatter,
                                            double confidence = kUsualConfidence);

/// How far two means lie apart.
struct Difference {
    double change = 0;         ///< second minus first
    double standardError = 0;  ///< of `change`
    double freedom = 0;        ///< after Welch and Satterthwaite
    double low = 0;            ///< limits of the true difference
    double high = 0;

    /// Whether the two can be told apart: the limits do not hold 0.
    [[nodiscard]] bool apart() const { return low > 0 || high < 0; }
};
/// Difference of two means whose scatters may differ: t with the degrees of freedom of Welch and
/// Satterthwaite (e-Handbook 7.3.1 and 1.3.5.3). No answer where either has fewer than two or neither
/// scatters at all.
[[nodiscard]] Answer<Difference> welchDifference(const Sample& first, const Sample& second,
                                                 double confidence = kUsualConfidence);

/// What a sample size is to do.
struct SizeRule {
    double confidence = kUsualConfidence;  ///< of the interval that tells apart, two-sided
    double power = kUsualPower;            ///< chance that it does so
    int groups = 2;                        ///< 2: the difference of two means; 1: one mean from a given value
};
/// How many repeats each group needs so that a difference of `difference` is told apart where a single run
/// scatters by `deviation`: the least n >= 2 with n >= groups (t(1 - a/2) + t(1 - b))^2
/// (deviation/difference)^2, t with groups (n - 1) degrees of freedom. e-Handbook 7.2.2.2 gives it for one
/// mean; for two the variance of the difference, twice as large, stands in its place (derived). No answer
/// without a difference or beyond kMostRepeats.
[[nodiscard]] Answer<int> repeatsToTell(double deviation, double difference, const SizeRule& rule = {});
inline constexpr int kMostRepeats = 1000;

/// One run of a day for drift().
struct DriftPoint {
    double at = 0;     ///< when: hours or the number of the run
    double value = 0;  ///< what was measured
    int group = 0;     ///< runs of one group differ by nothing but `at`
};
/// Straight-line trend within groups.
struct Drift {
    double slope = 0;  ///< of value for each unit of `at`
    double standardError = 0;
    double freedom = 0;
    double low = 0;  ///< limits of the true slope
    double high = 0;

    /// Whether there is one that can be told from none.
    [[nodiscard]] bool isTold() const { return low > 0 || high < 0; }
};
/// Least-squares slope common to all groups, each with a level of its own, so that a group's gain is not
/// taken for drift nor the other way round. With one group it is the straight line of e-Handbook 4.1.4.1;
/// several are the same line on deviations from the groups' means, a degree of freedom less each. No answer
/// where too few runs repeat or all of a group stand at one time.
[[nodiscard]] Answer<Drift> driftOf(std::span<const DriftPoint> points, double confidence = kUsualConfidence);

}  // namespace bolthole
