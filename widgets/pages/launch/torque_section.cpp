#include "widgets/pages/launch/torque_section.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <algorithm>
#include <iterator>

#include "widgets/kit/number_field.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/launch/dyno_dialog.h"

namespace bolthole {

namespace {

constexpr int kCurveHeight = 118;          // px
constexpr double kNextSpeed = 500 * kRpm;  // to a row that is added

QString withItsUnit(double value, Quantity quantity, Units units) {
    return QString::fromStdString(withUnit(figureText(value, quantity, units), quantity, units));
}

}  // namespace

TorquePicture::TorquePicture(QWidget* parent) : QWidget(parent) {
    setFixedHeight(kCurveHeight);
    setAccessibleName(tr("Torque curve"));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void TorquePicture::showCurve(const std::vector<TorquePoint>& torque, Units units) {
    torque_ = torque;
    units_ = units;
    QString words = tr("no torque curve yet");
    if (!torque.empty()) {
        const TorquePoint& peak = *std::ranges::max_element(torque, {}, &TorquePoint::torque);
        words = tr("%1 at %2 at the most")
                    .arg(withItsUnit(peak.torque, Quantity::torque, units),
                         withItsUnit(peak.speed, Quantity::speed, units));
    }
    setAccessibleDescription(words);
    setToolTip(capitalized(words));
    update();
}

void TorquePicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(theme().border, 1));
    painter.setBrush(theme().card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
    painter.setFont(textFont(TextSize::small));
    painter.setPen(theme().muted);
    const QRectF words = QRectF(rect()).adjusted(10, 6, -10, -5);
    painter.drawText(words, static_cast<int>(Qt::AlignTop | Qt::AlignLeft | Qt::TextWordWrap),
                     capitalized(accessibleDescription()));
    if (torque_.empty()) {
        return;
    }
    const double low = torque_.front().speed;
    const double high = std::max(torque_.back().speed, low + kRpm);
    const double most = std::max(1.0, std::ranges::max_element(torque_, {}, &TorquePoint::torque)->torque);
    const QRectF plot = QRectF(rect()).adjusted(16, 32, -16, -24);
    QPolygonF curve;
    for (const TorquePoint& point : torque_) {
        curve << QPointF(plot.left() + plot.width() * (point.speed - low) / (high - low),
                         plot.bottom() - plot.height() * std::max(0.0, point.torque / most));
    }
    painter.drawText(words, Qt::AlignBottom | Qt::AlignLeft, withItsUnit(low, Quantity::speed, units_));
    painter.drawText(words, Qt::AlignBottom | Qt::AlignRight,
                     withItsUnit(torque_.back().speed, Quantity::speed, units_));
    painter.setPen(roundPen(theme().instantCenter, 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(curve);
    painter.setBrush(theme().card);
    constexpr qsizetype kMostDots = 24;
    for (const QPointF& point : curve.size() > kMostDots ? QPolygonF() : curve) {
        painter.drawEllipse(point, 2.5, 2.5);
    }
}

TorqueSection::TorqueSection(SheetHub& hub, QWidget* parent)
    : QWidget(parent),
      hub_(hub),
      picture_(new TorquePicture(this)),
      box_(new QWidget(this)),
      grid_(new QGridLayout(box_)),
      toggle_(
          smallButton(tr("Rows"), tr("Rows of the torque curve"), tr("Shows the rows to be edited"), this)),
      paste_(smallButton(tr("Paste a dyno sheet…"), tr("Paste a dyno sheet"),
                         tr("Takes rows of rpm and torque as they are copied from a dyno sheet"), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(5);
    column->addWidget(picture_);
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
    picture_->showCurve(torque, style.units);
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
