#include "widgets/pages/loads/link_load_table.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "widgets/kit/unit_text.h"
#include "widgets/pages/loads/loads_facts.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

std::vector<std::size_t> largestFirst(const std::vector<JointLoads>& joints) {
    std::vector<std::size_t> order(joints.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, std::ranges::greater{},
                             [&joints](std::size_t index) { return joints[index].worst.largest(); });
    return order;
}

/// Empty where there is no such load at any travel.
QString place(double travel, Units units) {
    return std::isnan(travel) ? QString() : travelWords(travel, units);
}

QString amount(double newtons, Units units) {
    return newtons > 0 ? QString::fromStdString(figureText(newtons, Quantity::force, units))
                       : QString(QChar(0x2014));
}

}  // namespace

LinkLoadTable::LinkLoadTable(QWidget* parent)
    : ReadTable(tr("Link loads"),
                {tr("joint"), tr("tension"), tr("at"), tr("compression"), tr("at"), tr("at ride"),
                 tr("of rating"), tr("determined by statics")},
                parent) {}

void LinkLoadTable::showLoads(const Car& car, const LinkFigures& figures, double factor, Units units) {
    const QString unit = unitText(Quantity::force, units);
    horizontalHeaderItem(kTension)->setText(tr("tension, %1").arg(unit));
    horizontalHeaderItem(kCompression)->setText(tr("compression, %1").arg(unit));
    horizontalHeaderItem(kAtRide)->setText(tr("at ride, tension +, %1").arg(unit));
    horizontalHeaderItem(kOfRating)->setText(
        tr("load × %1 of rating")
            .arg(QString::fromStdString(fieldText(factor, Quantity::ratio, NumberStyle{units}))));
    const std::vector<std::size_t> order = largestFirst(figures.joints);
    setRows(static_cast<int>(order.size()));
    for (std::size_t row = 0; row < order.size(); ++row) {
        showJoint(static_cast<int>(row), car, figures.joints[order[row]], units);
    }
    fit();
}

void LinkLoadTable::showJoint(int row, const Car& car, const JointLoads& joint, Units units) {
    const WorstLoad& worst = joint.worst;
    setCell(row, kJoint, capitalized(QString::fromStdString(jointWords(car, joint.link, joint.side))), true);
    setCell(row, kTension, amount(worst.tension, units));
    setCell(row, kTensionAt, place(worst.tensionAt, units), true);
    setCell(row, kCompression, amount(worst.compression, units));
    setCell(row, kCompressionAt, place(worst.compressionAt, units), true);
    setCell(row, kAtRide, QString::fromStdString(figureText(joint.atRide, Quantity::force, units)));
    const bool isOver = joint.use && *joint.use > 1;
    QString use = tr("no rating");
    if (joint.use) {
        use =
            figureWithUnit(100 * *joint.use, Quantity::percent, units) + (isOver ? tr(", over") : QString());
    }
    setCell(row, kOfRating, use);
    setProblem(row, kOfRating, isOver);
    setCell(row, kCertainty, worst.determinate ? tr("yes") : tr("one possible share"), true);
    item(row, kJoint)
        ->setToolTip(joint.isRod
                         ? tr("Bracket hole and joint at either end carry the same. At ride: tension +, "
                              "compression −.")
                         : tr("The amount of the force at this joint, whichever way it points."));
}

}  // namespace bolthole
