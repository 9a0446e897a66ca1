#include "widgets/pages/measure/how_to_panel.h"

#include <QPushButton>
#include <QScreen>
#include <QVBoxLayout>
#include <algorithm>

#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/measure/measuring_walk.h"
#include "widgets/pages/measure/point_picture.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr int kWide = 620;  // px

}  // namespace

HowToPanel::HowToPanel(QWidget* parent)
    : QDialog(parent, Qt::Tool),
      name_(new ToneLabel(ToneLabel::Tone::plain, QString(), this)),
      picture_(new PointPicture(this)),
      words_(new ToneLabel(ToneLabel::Tone::plain, QString(), this)) {
    setObjectName(QStringLiteral("howToPanel"));
    setWindowTitle(tr("How to measure this"));
    auto* column = new QVBoxLayout(this);
    name_->setFont(textFont(TextSize::title, true));
    words_->setObjectName(QStringLiteral("howToWords"));
    words_->setFont(textFont(TextSize::body));
    for (ToneLabel* label : {name_, words_}) {
        label->setWordWrap(true);
    }
    column->addWidget(name_);
    column->addWidget(picture_, 1);
    column->addWidget(words_);
    auto* close = new QPushButton(tr("Close"), this);
    close->setDefault(true);
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    column->addWidget(close, 0, Qt::AlignRight);
}

void HowToPanel::showNumber(const BenchState& state, const FieldId& id, const QWidget* field) {
    const FieldWords words = wordsFor(state.car, id);
    name_->showText(capitalized(words.name));
    words_->showText(words.howTo);
    setAccessibleDescription(words.howTo);
    const Car& drawn = state.faults.empty() ? state.car : state.solvedCar;  // else it can't be drawn
    FieldId number = id;
    number.uncertainty = false;
    const bool isDrawn = showOnSheet(drawn, number, words.howTo) || showHowTo(drawn, number);
    picture_->setVisible(isDrawn);
    if (!isDrawn) {
        words_->showText(words.howTo + QStringLiteral(" ") + tr("No picture: %1.").arg(whyNoHowTo(id.field)));
    }
    open(isDrawn, field);
}

void HowToPanel::showPicture(const QString& name, const QString& howTo, const HowToPicture& picture,
                             const QWidget* field) {
    name_->showText(name);
    words_->showText(howTo);
    setAccessibleDescription(howTo);
    picture_->setVisible(true);
    picture_->showHowTo(picture);
    open(true, field);
}

void HowToPanel::open(bool isDrawn, const QWidget* field) {
    const int least = layout()->hasHeightForWidth() ? layout()->heightForWidth(kWide) : 0;
    resize(kWide, std::max(isDrawn ? 400 : 140, least));
    if (field != nullptr) {
        standBy(*field);
    }
    show();
    activateWindow();
}

// Where the car's own picture on the measuring sheet has the number as a point or letter.
bool HowToPanel::showOnSheet(const Car& car, const FieldId& id, const QString& howTo) {
    const MeasuringWalk walk = measuringWalk(car);
    const auto stop = std::ranges::find(walk.stops, id, &WalkStop::id);
    if (stop == walk.stops.end() || stop->sign.isEmpty() || id.field == Field::linkLength) {
        return false;
    }
    picture_->showPoint(car, walk.areas[stop->area], stop->sign);
    if (picture_->litAt().empty()) {
        return false;  // a place that is not entered yet is not drawn
    }
    words_->showText(howTo + QStringLiteral(" ") + walk.areas[stop->area].hint);
    return true;
}

bool HowToPanel::showHowTo(const Car& car, const FieldId& id) {
    const std::optional<HowToPicture> picture = howToPicture(car, id);
    if (picture) {
        picture_->showHowTo(*picture);
    }
    return picture.has_value();
}

// Below the field, else above it, else beside it: the number stays in sight, and all of the panel with its
// frame.
void HowToPanel::standBy(const QWidget& field) {
    constexpr int kGap = 6;
    constexpr int kFrame = 32;  // px: what a desktop puts around a window, at the most
    const QRect room = field.screen()->availableGeometry();
    const QRect at(field.mapToGlobal(QPoint(0, 0)), field.size());
    const int high = height() + kFrame;
    QPoint corner(at.left(), at.bottom() + kGap);
    if (corner.y() + high > room.bottom()) {
        corner.setY(at.top() - kGap - high);
    }
    if (corner.y() < room.top()) {
        const bool fitsRight = at.right() + kGap + width() <= room.right();
        corner = {fitsRight ? at.right() + kGap : at.left() - kGap - width(), room.bottom() - high};
    }
    corner.setX(std::clamp(corner.x(), room.left(), std::max(room.left(), room.right() - width())));
    corner.setY(std::max(corner.y(), room.top()));
    move(corner);
}

}  // namespace bolthole
