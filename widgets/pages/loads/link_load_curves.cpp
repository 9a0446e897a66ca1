#include "widgets/pages/loads/link_load_curves.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr double kSame = 1.0;       // N: sides whose loads differ by less have one curve
constexpr double kLeastSpan = 100;  // N

ThemeColor colorOf(Role role) {
    return role == Role::lower ? &Theme::lower : role == Role::upper ? &Theme::upper : &Theme::crosswise;
}

bool isSame(const ChartSeries& one, const ChartSeries& other) {
    return std::ranges::equal(one.points, other.points, [](const ChartPoint& a, const ChartPoint& b) {
        return std::isnan(a.value) ? std::isnan(b.value) : std::abs(a.value - b.value) < kSame;
    });
}

ChartSeries curveOf(const Car& car, const Trace& trace, const LinkFigures& figures, std::size_t joint) {
    const JointLoads& at = figures.joints[joint];
    const Link& link = car.links[static_cast<std::size_t>(at.link)];
    ChartSeries series{.name = QString::fromStdString(jointWords(car, at.link, at.side))};
    series.color = colorOf(roleOf(link, car.rearTireRadius));
    series.line = at.side == Side::right ? ChartLine::longDashes : ChartLine::solid;
    series.width = 2;
    for (std::size_t row = 0; row < trace.stations.size(); ++row) {
        series.points.push_back({trace.stations[row][Figure::travel], figures.sweep.value(row, joint)});
    }
    return series;
}

}  // namespace

ChartCard linkLoadCard(const Car& car, const Trace& trace, const LinkFigures& figures, Units units) {
    ChartCard card;
    card.titles = {tr("Through travel: tension to the right, compression to the left"),
                   tr("Tension right, compression left"), tr("Loads")};
    card.unitText = unitText(Quantity::force, units);
    card.unit = shownUnit(Quantity::force, units);
    card.minimumSpan = kLeastSpan;
    card.rules = {{.at = 0, .setsRange = true}};
    for (std::size_t joint = 0; joint < figures.joints.size(); ++joint) {
        ChartSeries series = curveOf(car, trace, figures, joint);
        const int link = figures.joints[joint].link;
        const bool isPair = joint > 0 && figures.joints[joint - 1].link == link;
        if (isPair && isSame(card.series.back(), series)) {
            card.series.back().name = tr("%1, both sides").arg(linkName(car, link));
        } else {
            card.series.push_back(std::move(series));
        }
    }
    return card;
}

CurveChart* newLinkLoadChart(QWidget* parent) {
    auto* chart = new CurveChart(tr("Link loads through travel"),
                                 lookInCard(ChartLook::Head::beside, {760, 280}, {460, 260}), parent);
    chart->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    chart->setAccessibleDescription(tr("The table above holds the largest loads and where they are."));
    return chart;
}

}  // namespace bolthole
