#include "geometry/passes/statistics.h"

#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <map>
#include <numeric>
#include <string>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

/// What a share `above` of Student's t lies above.
double upperT(double freedom, double above) {
    return boost::math::quantile(
        boost::math::complement(boost::math::students_t_distribution<double>(freedom), above));
}

/// Half the width of a two-sided interval, in standard errors.
double reach(double freedom, double confidence) {
    return upperT(freedom, (1.0 - confidence) / 2.0);
}

double meanOf(std::span<const double> values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// Sum of squares about the mean; what rounding leaves of the mean is taken off again.
double squaresAbout(std::span<const double> values, double mean) {
    double squares = 0;
    double rest = 0;
    for (const double value : values) {
        squares += (value - mean) * (value - mean);
        rest += value - mean;
    }
    return std::max(0.0, squares - rest * rest / static_cast<double>(values.size()));
}

Interval around(double middle, double standardError, double freedom, double confidence) {
    const double half = reach(freedom, confidence) * standardError;
    return {middle, middle - half, middle + half, freedom};
}

/// Sums of a straight line within groups.
struct LineSums {
    double xx = 0;
    double xy = 0;
    int runs = 0;
    int groups = 0;
};

void addGroup(LineSums& sums, std::span<const DriftPoint> points) {
    double x = 0;
    double y = 0;
    for (const DriftPoint& point : points) {
        x += point.at;
        y += point.value;
    }
    x /= static_cast<double>(points.size());
    y /= static_cast<double>(points.size());
    for (const DriftPoint& point : points) {
        sums.xx += (point.at - x) * (point.at - x);
        sums.xy += (point.at - x) * (point.value - y);
    }
    sums.runs += static_cast<int>(points.size());
    ++sums.groups;
}

/// Sum of squares about the line, from the points themselves: yy - xy^2 / xx would cancel.
double squaresAboutLine(std::span<const DriftPoint> points, double slope) {
    std::vector<double> level;
    for (const DriftPoint& point : points) {
        level.push_back(point.value - slope * point.at);
    }
    return squaresAbout(level, meanOf(level));
}

}  // namespace

Sample sampleOf(std::span<const double> values) {
    if (values.empty()) {
        return {};
    }
    const double mean = meanOf(values);
    const auto count = static_cast<double>(values.size());
    const double deviation = count < 2 ? 0.0 : std::sqrt(squaresAbout(values, mean) / (count - 1));
    return {static_cast<int>(values.size()), mean, deviation};
}

Answer<Scatter> pooledScatter(std::span<const std::vector<double>> groups) {
    double squares = 0;
    double freedom = 0;
    for (const std::vector<double>& group : groups) {
        if (group.size() > 1) {
            squares += squaresAbout(group, meanOf(group));
            freedom += static_cast<double>(group.size()) - 1;
        }
    }
    if (freedom < 1) {
        return Answer<Scatter>::none(say("no setup was run twice on one surface and day"));
    }
    return Scatter{std::sqrt(squares / freedom), freedom};
}

Answer<Interval> meanInterval(const Sample& sample, double confidence) {
    if (sample.count < 2) {
        return Answer<Interval>::none(sample.count == 0 ? say("no pass was run")
                                                        : say("one pass proves nothing"));
    }
    const Scatter own{sample.deviation, static_cast<double>(sample.count) - 1};
    return meanInterval(sample, own, confidence);
}

Answer<Interval> meanInterval(const Sample& sample, const Scatter& scatter, double confidence) {
    if (sample.count == 0) {
        return Answer<Interval>::none(say("no pass was run"));
    }
    return around(sample.mean, scatter.deviation / std::sqrt(static_cast<double>(sample.count)),
                  scatter.freedom, confidence);
}

Answer<Difference> welchDifference(const Sample& first, const Sample& second, double confidence) {
    if (first.count < 2 || second.count < 2) {
        const bool none = first.count == 0 || second.count == 0;
        return Answer<Difference>::none(none ? say("no pass was run") : say("one pass proves nothing"));
    }
    const double one = first.deviation * first.deviation / first.count;
    const double two = second.deviation * second.deviation / second.count;
    if (one + two == 0) {
        return Answer<Difference>::none(say("the passes do not scatter at all"));
    }
    const double freedom =
        (one + two) * (one + two) / (one * one / (first.count - 1) + two * two / (second.count - 1));
    const double error = std::sqrt(one + two);
    const Interval interval = around(second.mean - first.mean, error, freedom, confidence);
    return Difference{interval.middle, error, freedom, interval.low, interval.high};
}

Answer<int> repeatsToTell(double deviation, double difference, const SizeRule& rule) {
    if (difference == 0) {
        return Answer<int>::none(say("there is no difference to tell"));
    }
    const double ratio = deviation / difference;
    for (int count = 2; count <= kMostRepeats; ++count) {
        const double freedom = static_cast<double>(rule.groups) * (count - 1);
        const double quantiles = reach(freedom, rule.confidence) + upperT(freedom, 1.0 - rule.power);
        if (count >= rule.groups * quantiles * quantiles * ratio * ratio) {
            return count;
        }
    }
    return Answer<int>::none(say("more than %1 passes each", kMostRepeats));
}

Answer<Drift> driftOf(std::span<const DriftPoint> points, double confidence) {
    std::map<int, std::vector<DriftPoint>> groups;
    for (const DriftPoint& point : points) {
        groups[point.group].push_back(point);
    }
    LineSums sums;
    for (const auto& [group, members] : groups) {
        addGroup(sums, members);
    }
    const double freedom = sums.runs - sums.groups - 1;
    if (freedom < 1) {
        return Answer<Drift>::none(say("too few passes were repeated to see a trend"));
    }
    if (sums.xx <= 0) {
        return Answer<Drift>::none(say("all repeats were run at one time"));
    }
    const double slope = sums.xy / sums.xx;
    double squares = 0;
    for (const auto& [group, members] : groups) {
        squares += squaresAboutLine(members, slope);
    }
    const double error = std::sqrt(squares / freedom / sums.xx);
    const Interval interval = around(slope, error, freedom, confidence);
    return Drift{slope, error, freedom, interval.low, interval.high};
}

}  // namespace bolthole
