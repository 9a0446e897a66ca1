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
    // A car that can't be computed can't be drawn.
    const MeasuringWalk walk = measuringWalk(state.faults.empty() ? state.car : state.solvedCar);
    FieldId number = id;
    number.spread = false;
    const auto stop =
        std::ranges::find_if(walk.stops, [&](const WalkStop& each) { return each.id == number; });
    const bool isDrawn = stop != walk.stops.end() && !stop->sign.isEmpty();
    picture_->setVisible(isDrawn);
    if (isDrawn) {
        picture_->showPoint(state.faults.empty() ? state.car : state.solvedCar, walk.areas[stop->area],
                            stop->sign);
        words_->showText(words.howTo + QStringLiteral(" ") + walk.areas[stop->area].hint);
    }
    resize(620, isDrawn ? 400 : 140);
    if (field != nullptr) {
        standBy(*field);
    }
    show();
    activateWindow();
}

void HowToPanel::standBy(const QWidget& field) {
    const QRect room = field.screen()->availableGeometry();
    QPoint corner = field.mapToGlobal(QPoint(0, field.height() + 6));
    if (corner.y() + height() > room.bottom()) {
        corner.setY(field.mapToGlobal(QPoint(0, 0)).y() - height() - 6);
    }
    corner.setX(std::clamp(corner.x(), room.left(), std::max(room.left(), room.right() - width())));
    corner.setY(std::max(corner.y(), room.top()));
    move(corner);
}

}  // namespace bolthole
