#include "widgets/pages/days/pass_cards.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "geometry/passes/pass_statistics.h"
#include "widgets/kit/translation.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

constexpr double kDayGap = 0.5;       // passes
constexpr double kBeside = 0.42;      // passes; a stretch reaches so far beyond its first and last
constexpr double kLeastRoom = 0.02;   // s, above and below
constexpr double kLeastPasses = 6.0;  // a row is never drawn wider than for so many
constexpr double kEndOfRow = 0.6;     // passes
constexpr double kRoomAlong = 0.08;   // of a measure's span
constexpr double kLeastAlong = 1.0;   // of a measure, in its unit

const Pass& passAt(const PassBook& book, const PlottedPass& plotted) {
    return book.passes()[plotted.row];
}

QString wordsOf(const PassBook& book, std::size_t row) {
    const Pass& pass = book.passes()[row];
    return tr("Pass %1 of %2, setup %3: %4 s\n%5")
        .arg(pass.number)
        .arg(dayText(pass.date), book.letterOf(row), timeText(*pass.sixtyFoot),
             surfaceText(pass.surface.kind, pass.surface.name));
}

// Struck passes don't stretch the axis: a missed shift would flatten the rest.
Extent timesShown(const PassBook& book, const std::vector<PlottedPass>& passes) {
    Extent times;
    for (const PlottedPass& plotted : passes) {
        if (!passAt(book, plotted).struck) {
            times.take(*passAt(book, plotted).sixtyFoot);
        }
    }
    if (!times.holdsAny()) {
        times = {0, 1};
    }
    const double room = std::max(kLeastRoom, 0.12 * (times.most - times.least));
    return {times.least - room, times.most + room};
}

/// A card with the passes' marks; one that falls outside stands at the edge.
ChartCard cardOf(const PassBook& book, const std::vector<PlottedPass>& passes) {
    ChartCard card;
    card.titles = {tr("60 ft")};
    card.unitText = QStringLiteral("s");
    card.decimals = 3;
    card.isExtentExact = true;
    card.extent = timesShown(book, passes);
    ChartSeries series{.name = tr("60 ft"), .line = ChartLine::none, .marksPoints = true};
    for (const PlottedPass& plotted : passes) {
        const Pass& pass = passAt(book, plotted);
        series.points.push_back(
            {plotted.at, std::clamp(*pass.sixtyFoot, card.extent->least, card.extent->most)});
        series.marks.push_back(surfaceMark(pass.surface.kind, pass.struck));
        series.pointWords << wordsOf(book, plotted.row);
    }
    card.series.push_back(std::move(series));
    return card;
}

QString dayWords(const PassBook& book, const Pass& pass) {
    const QString ground =
        passNumberWords(pass.surface.temperature, PassField::surfaceTemperature, book.units());
    QStringList parts{dayText(pass.date), surfaceText(pass.surface.kind, pass.surface.name),
                      ground.isEmpty() ? ground : tr("surface %1").arg(ground)};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

/// Puts together what stands over and behind passes in a row.
class RowMaker {
  public:
    explicit RowMaker(const PassBook& book) : book_(book), samples_(book.passes().size()) {
        for (const Repeats& group : repeatsOf(book.car())) {
            const Sample sample = sampleOf(group.sixtyFoot);
            for (const std::size_t row : group.passes) {
                samples_[row] = sample;
            }
        }
    }

    void add(const PlottedPass& plotted) {
        const Pass& pass = passAt(book_, plotted);
        const bool isNewDay = before_ == nullptr || before_->date != pass.date;
        if (isNewDay) {
            groups.push_back({plotted.at - kBeside, dayWords(book_, pass)});
        }
        if (isNewDay || !(runWith(*before_) == runWith(pass) && before_->surface.kind == pass.surface.kind &&
                          before_->surface.name == pass.surface.name)) {
            sections.push_back({.from = plotted.at - kBeside,
                                .to = plotted.at,
                                .title = book_.letterOf(plotted.row),
                                .words = plotted.row == 0 ? QString() : book_.changes(plotted.row),
                                .divider = isNewDay ? ChartLine::solid : ChartLine::fineDashes});
            stretches_.push_back({});
        }
        sections.back().to = plotted.at + kBeside;
        if (stretches_.back().count == 0) {
            stretches_.back() = samples_[plotted.row];
        }
        before_ = &pass;
    }

    /// The mean of all repeats of each stretch, and where its true mean lies by the scatter of all repeats.
    [[nodiscard]] ChartSeries means() const {
        ChartSeries series{.name = {}, .width = 2, .setsRange = false};
        for (std::size_t i = 0; i < sections.size(); ++i) {
            const Sample& sample = stretches_[i];
            if (sample.count == 0) {
                continue;
            }
            ChartPoint point{sections[i].from, sample.mean};
            const Answer<Interval> interval =
                book_.scatter() ? meanInterval(sample, *book_.scatter()) : Answer<Interval>::none("");
            if (interval) {
                point.low = interval->low;
                point.high = interval->high;
            }
            series.points.push_back(point);
            point.imposed = sections[i].to;
            series.points.push_back(point);
            series.points.push_back({.imposed = point.imposed});
        }
        return series;
    }

    std::vector<ChartSection> sections;
    std::vector<ImposedGroup> groups;

  private:
    const PassBook& book_;
    std::vector<Sample> samples_;  // a row of the book each: all its repeats
    std::vector<Sample> stretches_;
    const Pass* before_ = nullptr;
};

/// A letter for each cluster of marks of a run, beside its middle.
std::vector<ChartNote> lettersOf(const PassBook& book, const std::vector<PlottedPass>& passes) {
    std::map<std::pair<std::size_t, double>, std::pair<double, int>> sums;
    for (const PlottedPass& plotted : passes) {
        if (!passAt(book, plotted).struck) {
            auto& [sum, count] = sums[{book.runs().ofPass[plotted.row], plotted.at}];
            sum += *passAt(book, plotted).sixtyFoot;
            ++count;
        }
    }
    std::vector<ChartNote> letters;
    letters.reserve(sums.size());
    for (const auto& [key, sum] : sums) {
        letters.push_back({key.second, sum.first / sum.second, QString::fromStdString(letterOf(key.first))});
    }
    return letters;
}

}  // namespace

PointMark surfaceMark(const std::optional<SurfaceKind>& kind, bool isStruck) {
    const bool isHollow = !kind || kind == SurfaceKind::street;
    const ChartMark mark = !kind                               ? ChartMark::diamond
                           : kind == SurfaceKind::street       ? ChartMark::circle
                           : kind == SurfaceKind::preppedTrack ? ChartMark::square
                                                               : ChartMark::triangle;
    return {.mark = mark, .isFilled = !isHollow, .isPale = isStruck};
}

PassChart passesInARow(const PassBook& book, const std::vector<std::size_t>& rows) {
    std::vector<PlottedPass> passes;
    std::vector<ImposedLabel> labels;
    RowMaker maker(book);
    double at = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const bool isNewDay = i > 0 && book.passes()[rows[i - 1]].date != book.passes()[rows[i]].date;
        at += (i > 0 ? static_cast<double>(rows[i] - rows[i - 1]) : 1) + (isNewDay ? kDayGap : 0);
        passes.push_back({rows[i], at});
        labels.push_back({at, QString::number(book.passes()[rows[i]].number)});
        maker.add(passes.back());
    }
    PassChart chart{labelAxis(labels), cardOf(book, passes)};
    chart.axis.hasLines = false;
    chart.axis.groups = std::move(maker.groups);
    if (!passes.empty()) {
        const double first = passes.front().at;
        chart.axis.low = first - kEndOfRow;
        chart.axis.high = std::max(at, first + kLeastPasses) + kEndOfRow;
    }
    chart.card.series.insert(chart.card.series.begin(), maker.means());
    chart.card.sections = std::move(maker.sections);
    chart.card.absent = tr("No pass has a 60 ft time yet.");
    return chart;
}

PassChart passesAgainst(const PassBook& book, const std::vector<PlottedPass>& passes, PassMeasure measure,
                        int missing) {
    PassChart chart{ChartAxis(), cardOf(book, passes)};
    const QString unit = measureUnit(measure, book.units());
    chart.axis.title = measureName(measure) + (unit.isEmpty() ? QString() : QStringLiteral(", ") + unit);
    if (missing > 0) {
        chart.axis.title += tr(" · %1 timed passes without it").arg(missing);
    }
    Extent along;
    for (const PlottedPass& plotted : passes) {
        along.take(plotted.at);
    }
    if (along.holdsAny()) {
        const bool isOne = along.most == along.least;
        const double span = isOne ? 0 : std::max(along.most - along.least, kLeastAlong);
        const double beside = isOne ? kLeastAlong / 2 : kRoomAlong * span;
        chart.axis.low = along.least - beside;
        chart.axis.high = along.least + span + beside;
    }
    chart.card.notes = lettersOf(book, passes);
    chart.card.absent = missing > 0 ? tr("No timed pass has a number for %1.").arg(measureName(measure))
                                    : tr("No pass has a 60 ft time yet.");
    return chart;
}

}  // namespace bolthole
