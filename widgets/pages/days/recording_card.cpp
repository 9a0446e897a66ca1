#include "widgets/pages/days/recording_card.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>
#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/curves/curve_chart.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

constexpr double kBeforeRelease = 0.3;  // s shown before it
constexpr double kAfterLine = 0.7;      // s shown after 60 ft
constexpr double kUsualEnd = 3.0;       // s where there is no 60 ft
constexpr std::size_t kMostPoints = 1500;
constexpr int kCardHeight = 176;

/// A recorded quantity and how it is called.
struct Shown {
    Recorded kind;
    const char* words;
};
constexpr std::array kShown{
    Shown{Recorded::speed, QT_TRANSLATE_NOOP("Bolthole", "speed")},
    Shown{Recorded::acceleration, QT_TRANSLATE_NOOP("Bolthole", "acceleration")},
    Shown{Recorded::engineSpeed, QT_TRANSLATE_NOOP("Bolthole", "engine speed")},
    Shown{Recorded::shaftSpeed, QT_TRANSLATE_NOOP("Bolthole", "driveshaft speed")},
    Shown{Recorded::frontTravel, QT_TRANSLATE_NOOP("Bolthole", "front travel")},
    Shown{Recorded::rearTravel, QT_TRANSLATE_NOOP("Bolthole", "rear travel")},
};
QString wordsOf(Recorded kind) {
    return tr(std::ranges::find(kShown, kind, &Shown::kind)->words);
}

/// The unit a kind is shown in: the usual one of its file, or what inch shows.
RecordedUnit unitFor(Recorded kind, Units units) {
    const bool isInch = units == Units::inch;
    const std::vector<RecordedUnit>& all = unitsOf(kind);
    return all[isInch && (kind == Recorded::speed || kind == Recorded::frontTravel ||
                          kind == Recorded::rearTravel)
                   ? 1
                   : 0];
}

double endOf(const ShownRecording& shown) {
    const double last = shown.recording.time.empty() ? 0 : shown.recording.time.back() - shown.start;
    const double wanted = shown.byRecording ? *shown.byRecording + kAfterLine : kUsualEnd;
    return std::max(std::min(last, wanted), 0.1);
}

ChartSeries recordedSeries(const ShownRecording& shown, Recorded kind, double end) {
    ChartSeries series{.name = tr("recorded")};
    const Recording& recording = shown.recording;
    std::vector<std::size_t> rows;
    for (std::size_t row = 0; row < recording.time.size(); ++row) {
        const double time = recording.time[row] - shown.start;
        if (time >= -kBeforeRelease && time <= end) {
            rows.push_back(row);
        }
    }
    const std::size_t stride = std::max<std::size_t>(1, rows.size() / kMostPoints);
    for (std::size_t at = 0; at < rows.size(); at += stride) {
        series.points.push_back({recording.time[rows[at]] - shown.start, recording.of(kind)[rows[at]]});
    }
    return series;
}

// Of a launch beside the recording.
ChartSeries launchSeries(const std::vector<LaunchRow>& rows, double LaunchRow::*value, double end,
                         const QString& name, ThemeColor color, ChartLine line) {
    ChartSeries series{.name = name, .color = color, .line = line, .width = 1.7};
    for (const LaunchRow& row : rows) {
        if (row.time <= end) {
            series.points.push_back({row.time, row.*value});
        }
    }
    return series;
}

ChartCard cardIn(const RecordedUnit& unit, Recorded kind, const QString& title) {
    ChartCard card;
    card.titles = {title};
    card.unitText = fromView(unit.mark);
    card.unit = unit.size;
    card.decimals = kind == Recorded::acceleration || unit.mark == "in" ? 2 : 0;
    card.minimumSpan = unit.size / 10;
    return card;
}

ChartSeries residualSeries(const RecordedMisfit& misfit, double end) {
    ChartSeries series{.name = tr("residual")};
    for (const RecordedSample& sample : misfit.samples) {
        if (sample.time <= end) {
            series.points.push_back({sample.time, sample.residual()});
        }
    }
    return series;
}

QString numberIn(const RecordedUnit& unit, double value) {
    return QStringLiteral("%1 %2").arg(digitsText(value / unit.size, 2), fromView(unit.mark));
}

// "Recorded less fitted, root mean square: speed 0.6 mph (at most 1.2 mph, at 0.85 s)".
QString misfitWords(const std::vector<RecordedMisfit>& misfits, Units units) {
    QStringList parts;
    for (const RecordedMisfit& misfit : misfits) {
        const RecordedUnit unit = unitFor(misfit.kind, units);
        const RecordedSample& farthest = misfit.farthest();
        parts << tr("%1 %2 (at most %3, at %4 s)")
                     .arg(wordsOf(misfit.kind), numberIn(unit, misfit.rms()),
                          numberIn(unit, std::abs(farthest.residual())),
                          QString::number(farthest.time, 'f', 2));
    }
    return tr("Recorded less fitted, root mean square: %1").arg(parts.join(QStringLiteral("; ")));
}

}  // namespace

std::vector<ChartCard> recordingCards(const ShownRecording& shown, Units units) {
    std::vector<ChartCard> cards;
    const double end = endOf(shown);
    for (const Shown& each : kShown) {
        if (!shown.recording.has(each.kind)) {
            continue;
        }
        ChartCard& card =
            cards.emplace_back(cardIn(unitFor(each.kind, units), each.kind, capitalized(wordsOf(each.kind))));
        card.series.push_back(recordedSeries(shown, each.kind, end));
        double LaunchRow::*const value = computedOf(each.kind);
        if (value != nullptr && !shown.computed.empty()) {
            card.series.push_back(launchSeries(shown.computed, value, end, tr("computed"), &Theme::baseline,
                                               ChartLine::dashed));
        }
        if (value != nullptr && !shown.fitted.empty()) {
            card.series.push_back(
                launchSeries(shown.fitted, value, end, tr("fitted"), &Theme::upper, ChartLine::fineDashes));
        }
    }
    for (const RecordedMisfit& misfit : shown.misfits) {
        const RecordedUnit unit = unitFor(misfit.kind, units);
        ChartCard& card = cards.emplace_back(
            cardIn(unit, misfit.kind, tr("%1, recorded less fitted").arg(capitalized(wordsOf(misfit.kind)))));
        ++card.decimals;
        card.series.push_back(residualSeries(misfit, end));
    }
    return cards;
}

QString recordingWords(const ShownRecording& shown, Units units) {
    QStringList parts;
    const auto add = [&parts](const QString& words, const std::optional<double>& time) {
        if (time) {
            parts << words.arg(timeText(*time));
        }
    };
    add(tr("recorded %1\u00A0s"), shown.byRecording);
    add(tr("by the clock %1\u00A0s"), shown.byClock);
    add(tr("computed %1\u00A0s"), shown.byComputation);
    const QString times = parts.isEmpty() ? tr("not to be had") : parts.join(QStringLiteral(", "));
    return tr("60 ft: %1").arg(times) +
           (shown.byRecording
                ? QString()
                : QLatin1Char('\n') + tr("The recording holds no speed or acceleration to 60 ft from "
                                         "the release.")) +
           (shown.misfits.empty() ? QString() : QLatin1Char('\n') + misfitWords(shown.misfits, units));
}

RecordingCard::RecordingCard(QWidget* parent) : Card(parent) {
    setObjectName(QStringLiteral("recordingCard"));
    setAccessibleName(tr("Recording"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 12, 16, 14);
    column->setSpacing(7);
    auto* heading = new ToneLabel(ToneLabel::Tone::plain, tr("Recording"), this);
    heading->setFont(textFont(TextSize::title, true));
    column->addWidget(heading);
    words_ = new ToneLabel(ToneLabel::Tone::plain, {}, this);
    words_->setWordWrap(true);
    column->addWidget(words_);
    ChartLook look;
    look.head = ChartLook::Head::keys;
    look.isStacked = true;
    look.hasFrame = false;
    look.ground = &Theme::card;
    look.leastSize = QSize(260, kCardHeight);
    chart_ = new CurveChart(tr("Recording over time"), look, this);
    column->addWidget(chart_);
    auto* row = new QHBoxLayout;
    add_ = smallButton(tr("Add recording…"), tr("Add recording"),
                       tr("A logger's or phone's table as CSV; it is kept beside the car's file"), this);
    start_ = smallButton(tr("Release is here"), tr("The release is at the cursor"),
                         tr("Takes the cursor's time as the release"), this);
    remove_ = smallButton(tr("Remove"), tr("Remove recording"),
                          tr("The pass forgets it; the file stays where it is"), this);
    for (QAbstractButton* button : {add_, start_, remove_}) {
        row->addWidget(button);
    }
    row->addStretch(1);
    column->addLayout(row);
    connect(add_, &QAbstractButton::clicked, this, &RecordingCard::addRequested);
    connect(remove_, &QAbstractButton::clicked, this, &RecordingCard::removeRequested);
    connect(start_, &QAbstractButton::clicked, this, [this] { emit startMoved(chart_->cursor()); });
    connect(chart_, &CurveChart::cursorMoved, chart_, qOverload<double>(&CurveChart::showCursor));
    offer();
}

void RecordingCard::showParts(bool hasRecording, bool hasCurves) {
    add_->setVisible(!hasRecording);
    remove_->setVisible(hasRecording);
    start_->setVisible(hasCurves);
    chart_->setVisible(hasCurves);
}

void RecordingCard::offer() {
    words_->setText(
        tr("None of this pass. A table with a time and speed, acceleration, rpm or travel is drawn over "
           "the computed launch."));
    showParts(false, false);
    layout()->activate();
}

void RecordingCard::showRecording(const ShownRecording& shown, Units units) {
    const bool hasCurves = shown.problem.isEmpty();
    words_->setText(hasCurves ? recordingWords(shown, units) : shown.problem);
    if (hasCurves) {
        const std::vector<ChartCard> cards = recordingCards(shown, units);
        chart_->setMinimumHeight(kCardHeight * static_cast<int>(std::max<std::size_t>(1, cards.size())));
        chart_->showCards(timeAxis(-kBeforeRelease, endOf(shown)), cards);
        chart_->showCursor(0);
    }
    showParts(true, hasCurves);
    layout()->activate();
}

}  // namespace bolthole
