#include "widgets/pages/launch/torque_section.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPushButton>
#include <algorithm>
#include <iterator>

#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/launch/dyno_dialog.h"

namespace bolthole {

namespace {

constexpr qsizetype kMostMarked = 24;      // rows; more marks would hide the curve
constexpr double kNextSpeed = 500 * kRpm;  // to a row that is added

QString withItsUnit(double value, Quantity quantity, Units units) {
    return QString::fromStdString(withUnit(figureText(value, quantity, units), quantity, units));
}

QString pointText(const TorquePoint& point, Units units) {
    return TorqueChart::tr("%1 at %2")
        .arg(withItsUnit(point.torque, Quantity::torque, units),
             withItsUnit(point.speed, Quantity::speed, units));
}

ChartLook torqueLook() {
    ChartLook look;
    look.head = ChartLook::Head::keys;
    look.hasCursor = false;
    look.ground = &Theme::panel;
    look.size = QSize(240, 130);
    look.leastSize = QSize(160, 130);
    return look;
}

ChartSeries curveOf(const std::vector<TorquePoint>& torque, Units units) {
    ChartSeries curve{
        .name = {}, .mark = ChartMark::circle, .marksPoints = std::ssize(torque) <= kMostMarked};
    for (const TorquePoint& point : torque) {
        curve.points.push_back({point.speed, point.torque});
        curve.pointWords << pointText(point, units);
    }
    return curve;
}

}  // namespace

TorqueChart::TorqueChart(QWidget* parent) : CurveChart(tr("Torque curve"), torqueLook(), parent) {
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void TorqueChart::showCurve(const std::vector<TorquePoint>& torque, Units units) {
    ChartAxis axis;
    axis.unit = shownUnit(Quantity::speed, units);
    axis.unitText = unitText(Quantity::speed, units);
    ChartCard card;
    card.titles = {tr("Torque curve")};
    card.absent = tr("No torque curve yet");
    card.unitText = unitText(Quantity::torque, units);
    card.unit = shownUnit(Quantity::torque, units);
    card.minimumSpan = card.unit;
    card.least = 0;
    card.neverBelowLeast = true;
    if (!torque.empty()) {
        const TorquePoint& peak = *std::ranges::max_element(torque, {}, &TorquePoint::torque);
        axis.low = torque.front().speed;
        axis.high = std::max(torque.back().speed, axis.low + kRpm);
        card.titles = {tr("%1 at the most").arg(pointText(peak, units)), pointText(peak, units)};
        card.extent = Extent{0, std::max(peak.torque, card.unit)};
        card.series = {curveOf(torque, units)};
    }
    showCards(axis, {card});
    const QString words = torque.empty() ? card.absent : card.titles.first();
    setAccessibleDescription(words);
    setToolTip(words);
}

TorqueSection::TorqueSection(SheetHub& hub, QWidget* parent)
    : QWidget(parent),
      hub_(hub),
      chart_(new TorqueChart(this)),
      box_(new QWidget(this)),
      grid_(new QGridLayout(box_)),
      toggle_(
          smallButton(tr("Rows"), tr("Rows of the torque curve"), tr("Shows the rows to be edited"), this)),
      paste_(smallButton(tr("Paste a dyno sheet…"), tr("Paste a dyno sheet"),
                         tr("Takes rows of rpm and torque as they are copied from a dyno sheet"), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(5);
    column->addWidget(chart_);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(4);
    toggle_->setCheckable(true);
    buttons->addWidget(paste_);
    buttons->addStretch(1);
    buttons->addWidget(toggle_);
    column->addLayout(buttons);
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setSpacing(4);
    auto* add = smallButton(tr("Add a row"), tr("Add a row to the torque curve"),
                            tr("Adds a row after the last one"), box_);
    grid_->addWidget(add, static_cast<int>(kMaxTorqueRows) + 1, 0, Qt::AlignLeft);
    column->addWidget(box_);
    box_->hide();
    connect(add, &QAbstractButton::clicked, this, &TorqueSection::appendRow);
    connect(paste_, &QAbstractButton::clicked, this, &TorqueSection::paste);
    connect(toggle_, &QAbstractButton::toggled, this, [this](bool shown) {
        box_->setVisible(shown);
        emit rowsShown(shown);
    });
}

void TorqueSection::showRows(bool shown) {
    toggle_->setChecked(shown);
}

bool TorqueSection::showsRows() const {
    return toggle_->isChecked();
}

void TorqueSection::enter() {
    paste_->setFocus(Qt::OtherFocusReason);
}

NumberField* TorqueSection::field(std::size_t row, double TorquePoint::*number, Quantity quantity,
                                  const QString& name) {
    auto* made = new NumberField(quantity, box_);
    made->setAccessibleName(name);
    made->setCheck([this, row, number](double value) {
        std::vector<TorquePoint> changed = torque_;
        if (row < changed.size()) {
            changed[row].*number = value;
        }
        return refusal(changed).reason;
    });
    connect(made, &NumberField::committed, this,
            [this, row, number](double value) { change(row, number, value); });
    return made;
}

void TorqueSection::addRow() {
    const std::size_t row = rows_.size();
    const int line = static_cast<int>(row);
    auto* speed =
        field(row, &TorquePoint::speed, Quantity::speed, tr("torque curve, row %1, rpm").arg(row + 1));
    auto* torque =
        field(row, &TorquePoint::torque, Quantity::torque, tr("torque curve, row %1, torque").arg(row + 1));
    auto* remove = smallButton(QStringLiteral("×"), tr("remove row %1 of the torque curve").arg(row + 1),
                               tr("Removes the row"), box_);
    connect(remove, &QAbstractButton::clicked, this, [this, row] { removeRow(row); });
    grid_->addWidget(speed, line, 0);
    grid_->addWidget(torque, line, 1);
    grid_->addWidget(remove, line, 2);
    for (QWidget* each :
         {static_cast<QWidget*>(speed), static_cast<QWidget*>(torque), static_cast<QWidget*>(remove)}) {
        each->show();
    }
    rows_.push_back({speed, torque, remove});
}

void TorqueSection::dropRow() {
    const Row row = rows_.back();
    rows_.pop_back();
    for (QWidget* widget :
         {static_cast<QWidget*>(row.speed), static_cast<QWidget*>(row.torque), row.remove}) {
        widget->blockSignals(true);  // the call may come out of one of its signals
        widget->hide();
        widget->deleteLater();
    }
}

void TorqueSection::showTorque(const std::vector<TorquePoint>& torque, NumberStyle style) {
    torque_ = torque;
    style_ = style;
    chart_->showCurve(torque, style.units);
    while (rows_.size() > torque.size()) {
        dropRow();
    }
    while (rows_.size() < torque.size()) {
        addRow();
    }
    for (std::size_t row = 0; row < torque.size(); ++row) {
        rows_[row].speed->showNumber(torque[row].speed, style);
        rows_[row].torque->showNumber(torque[row].torque, style);
    }
}

void TorqueSection::change(std::size_t row, double TorquePoint::*number, double value) {
    if (row < torque_.size()) {
        std::vector<TorquePoint> changed = torque_;
        changed[row].*number = value;
        hub_.request(SetTorque{std::move(changed)});
    }
}

void TorqueSection::removeRow(std::size_t row) {
    if (row < torque_.size()) {
        std::vector<TorquePoint> changed = torque_;
        changed.erase(std::next(changed.begin(), static_cast<std::ptrdiff_t>(row)));
        hub_.request(SetTorque{std::move(changed)});
    }
}

void TorqueSection::appendRow() {
    std::vector<TorquePoint> changed = torque_;
    changed.push_back(torque_.empty()
                          ? TorquePoint{2000 * kRpm, 0}
                          : TorquePoint{torque_.back().speed + kNextSpeed, torque_.back().torque});
    if (refusal(changed).reason.empty()) {
        hub_.request(SetTorque{std::move(changed)});
    }
}

void TorqueSection::paste() {
    DynoDialog dialog(style_.units, this);
    if (dialog.exec() == QDialog::Accepted && !dialog.torque().empty()) {
        hub_.request(SetTorque{dialog.torque()});
    }
}

}  // namespace bolthole
