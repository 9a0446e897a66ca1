#include "widgets/fields/measured_bar.h"

#include <QHBoxLayout>
#include <QPainter>
#include <algorithm>

#include "geometry/car/starting_numbers.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr double kTrack = 2;  // px high, the line that fills as numbers are measured

}  // namespace

MeasuredBar::MeasuredBar(QWidget* parent)
    : QWidget(parent),
      words_(new ToneLabel(ToneLabel::Tone::plain, QString(), this)),
      next_(smallButton(tr("Next"), tr("Go to the next starting number"), QString(), this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(14, 8, 12, 9);
    row->setSpacing(8);
    words_->setObjectName(QStringLiteral("measuredCount"));
    words_->setFont(textFont(TextSize::body));
    words_->setWordWrap(true);  // on a narrow sheet
    row->addWidget(words_, 1);
    next_->setObjectName(QStringLiteral("nextStarting"));
    QAbstractButton* enter = smallButton(tr("Enter…"), tr("Enter measurements"),
                                         tr("Types in a filled measuring sheet, number by number. "
                                            "Ctrl+Shift+M"),
                                         this);
    enter->setObjectName(QStringLiteral("enterMeasurements"));
    connect(enter, &QAbstractButton::clicked, this, &MeasuredBar::enteringRequested);
    row->addWidget(enter);
    row->addWidget(next_);
    connect(next_, &QAbstractButton::clicked, this, &MeasuredBar::nextRequested);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] { update(); });
    hide();
}

void MeasuredBar::showCar(const Car& car) {
    car_ = &car;
    const std::vector<FieldId> all = measurableNumbers(car);
    const auto left = static_cast<std::size_t>(
        std::ranges::count_if(all, [&car](const FieldId& id) { return !isMeasured(car, id); }));
    const std::size_t measured = all.size() - left;
    const double share = all.empty() ? 1.0 : static_cast<double>(measured) / static_cast<double>(all.size());
    words_->showText(tr("%1 of %2 numbers measured").arg(measured).arg(all.size()));
    words_->setToolTip(wrappedToolTip(
        tr("Of the numbers this car has. The others are starting numbers or worked out, on a tinted ground "
           "with dots "
           "below them: type what you measure, the same number too. The measuring sheet and Enter "
           "measurements count boxes instead: they have more, also for what the car has no number "
           "of yet.")));
    next_->setToolTip(wrappedToolTip(tr("Goes to the next number that nobody measured. Ctrl+M")));
    setVisible(left > 0);
    if (share != share_) {
        share_ = share;
        update();
    }
}

void MeasuredBar::goOn(const std::optional<FieldId>& from) {
    if (car_ == nullptr) {
        return;
    }
    const std::vector<FieldId> all = measurableNumbers(*car_);
    const std::optional<FieldId>& start = from ? from : last_;
    const auto at = start ? std::ranges::find(all, *start) : all.end();
    const std::size_t first = at == all.end() ? 0 : static_cast<std::size_t>(at - all.begin()) + 1;
    for (std::size_t step = 0; step < all.size(); ++step) {
        const FieldId& id = all[(first + step) % all.size()];
        if (!isMeasured(*car_, id)) {
            last_ = id;
            emit fieldRequested(id);
            return;
        }
    }
}

void MeasuredBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF track(14, height() - kTrack - 3, width() - 28, kTrack);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().border);
    painter.drawRoundedRect(track, kTrack / 2, kTrack / 2);
    painter.setBrush(theme().startingMark);
    painter.drawRoundedRect(QRectF(track.topLeft(), QSizeF(track.width() * share_, kTrack)), kTrack / 2,
                            kTrack / 2);
}

}  // namespace bolthole
