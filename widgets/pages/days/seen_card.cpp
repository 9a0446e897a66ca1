#include "widgets/pages/days/seen_card.h"

#include <QVBoxLayout>
#include <cmath>

#include "geometry/car/faults.h"
#include "geometry/dynamics/launch_run.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

QString readingOf(Seen seen, const Pass& pass) {
    switch (seen) {
        case Seen::noseToppedOut:
            return tr("Nose topped out → the front rises faster than it has travel: more front rebound.");
        case Seen::frontTiresUp:
            return tr(
                "Front tires up → more load goes back than is needed, and nothing steers: lower launch rpm, "
                "more front rebound, or less lift from the links. Back off before it is a habit.");
        case Seen::spunAtHit:
            return pass.saw(Seen::noseToppedOut) || pass.saw(Seen::bounced)
                       ? tr("Spun at the hit while the car rose → the rear pushes apart faster than the "
                            "tires can "
                            "take it: more rear rebound, or less anti-squat.")
                       : tr("Spun at the hit → the tires were asked for more than this surface holds: lower "
                            "launch "
                            "rpm, or tires set for less grip.");
        case Seen::spunLater:
            return tr(
                "Spun later → load left the rear after the hit, often as the nose came down: more front "
                "rebound, or more rear bump.");
        case Seen::bounced:
            return tr(
                "Bounced → tires and springs give back what the shocks do not hold: more rear rebound, or "
                "more tire pressure.");
        case Seen::paddleMarks:
            return tr("Paddle marks → pressure low for this grip: a little more in the rear tires.");
        case Seen::movedLeft:
            return tr(
                "Moved left → the right rear pushed more: compare pressures and preload side to side, and "
                "whether the axle stands square.");
        case Seen::movedRight:
            break;
    }
    return tr(
        "Moved right → the left rear pushed more: compare pressures and preload side to side, and whether "
        "the axle stands square.");
}

}  // namespace

QStringList readingsOf(const Pass& pass) {
    QStringList lines;
    for (std::size_t at = 0; at < kSeenCount; ++at) {
        if (pass.seen[at]) {
            lines << readingOf(static_cast<Seen>(at), pass) + tr(" (Common practice, no source.)");
        }
    }
    return lines;
}

std::optional<LaunchRun> launchOf(const Car& setup, const Pass& pass) {
    Car car = setup;
    if (pass.launchRpm) {
        car.launch.engine.launchSpeed = *pass.launchRpm * kRpm;
    }
    const LaunchInputsResult entered = findFaults(car).empty() ? launchInputsOf(car) : LaunchInputsResult{};
    return entered.inputs ? std::optional(simulateLaunch(*entered.inputs)) : std::nullopt;
}

QString computedLaunch(const Car& setup, const Pass& pass) {
    const std::optional<LaunchRun> found = launchOf(setup, pass);
    if (!found) {
        return tr("The launch of this setup is not computed: not all of its numbers are entered.");
    }
    const LaunchRun& run = *found;
    if (run.end != LaunchEnd::done || !run.figures.sixtyFoot) {
        return tr("The launch of this setup, as it is entered, does not reach 60 ft when computed.");
    }
    QStringList parts{
        tr("60 ft %1 s").arg(timeText(*run.figures.sixtyFoot)),
        tr("most slip %1 %").arg(std::lround(100 * run.figures.largestSlip)),
        run.figures.toppedOut
            ? tr("the nose tops out after %1 s").arg(QString::number(*run.figures.toppedOut, 'f', 2))
            : tr("the nose does not top out")};
    if (run.figures.frontUp) {
        parts << tr("front tires up after %1 s").arg(QString::number(*run.figures.frontUp, 'f', 2));
    }
    return tr("Computed for this setup with the launch's numbers as they stand: %1.")
        .arg(parts.join(QStringLiteral(", ")));
}

SeenCard::SeenCard(const PassBook& book, QWidget* parent)
    : Card(parent),
      book_(book),
      heading_(new ToneLabel(ToneLabel::Tone::plain, {}, this)),
      hints_(new ToneLabel(ToneLabel::Tone::plain, {}, this)),
      computed_(new ToneLabel(ToneLabel::Tone::muted, {}, this)) {
    setObjectName(QStringLiteral("seenCard"));
    setAccessibleName(tr("What was seen"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 12, 16, 14);
    column->setSpacing(7);
    heading_->setFont(textFont(TextSize::title, true));
    hints_->setFont(textFont(TextSize::small));
    for (QLabel* label : {heading_, hints_, computed_}) {
        label->setWordWrap(true);
        column->addWidget(label);
    }
}

void SeenCard::showPass(const std::optional<std::size_t>& row) {
    setVisible(row.has_value());
    if (!row) {
        return;
    }
    const Pass& pass = book_.passes()[*row];
    heading_->setText(tr("Pass %1 of %2: what was seen").arg(pass.number).arg(dayText(pass.date)));
    const QStringList readings = readingsOf(pass);
    hints_->setText(readings.isEmpty() ? tr("Nothing was noted.") : readings.join(QStringLiteral("\n\n")));
    const Car* setup = book_.setupOf(*row);
    computed_->setText(setup == nullptr ? QString() : computedLaunch(*setup, pass));
    computed_->setVisible(setup != nullptr);
    layout()->activate();  // as tall as its words at once, not an event later
}

}  // namespace bolthole
