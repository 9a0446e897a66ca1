#include "widgets/pages/launch/film_bar.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/translation.h"
#include "widgets/pages/launch/film_player.h"
#include "widgets/pages/launch/launch_words.h"

namespace bolthole {

namespace {

constexpr double kKnob = 7;       // px
constexpr double kSides = 12;     // px
constexpr double kTickReach = 5;  // px, around a tick that is pointed at
constexpr double kPerSecond = 1000;

}  // namespace

QString speedWords(double speed) {
    for (const FilmSpeed& each : kFilmSpeeds) {
        if (each.speed == speed) {
            return speed == 1 ? tr("at full speed") : tr("at %1 speed").arg(QLatin1String(each.words));
        }
    }
    return {};
}

PlayButton::PlayButton(QWidget* parent) : QAbstractButton(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setCursor(Qt::PointingHandCursor);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
    showPlaying(false);
}

void PlayButton::showPlaying(bool playing) {
    playing_ = playing;
    setAccessibleName(playing ? tr("Pause") : tr("Play"));
    setToolTip(playing ? tr("Pause (Space)") : tr("Play (Space)"));
    update();
}

void PlayButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPointF center = QRectF(rect()).center();
    if (hasFocus()) {
        painter.setPen(QPen(theme().focus, 2));
        painter.drawEllipse(center, 13, 13);
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(!isEnabled() ? theme().metal : underMouse() ? theme().focus : theme().ink);
    if (playing_) {
        painter.drawRoundedRect(QRectF(center.x() - 6, center.y() - 7, 4, 14), 1, 1);
        painter.drawRoundedRect(QRectF(center.x() + 2, center.y() - 7, 4, 14), 1, 1);
    } else {
        painter.drawPolygon(
            QPolygonF{center + QPointF(-5, -7), center + QPointF(8, 0), center + QPointF(-5, 7)});
    }
}

FilmTrack::FilmTrack(QWidget* parent) : QAbstractSlider(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setSingleStep(10);
    setPageStep(100);
    setAccessibleName(tr("Time after the release, in milliseconds"));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
    connect(this, &QAbstractSlider::valueChanged, this, [this](int value) {
        time_ = std::min(value / kPerSecond, end_);
        update();
        emit sought(time_);
    });
}

void FilmTrack::showFilm(double end, std::vector<FilmMark> marks) {
    end_ = end;
    marks_ = std::move(marks);
    const bool blocked = blockSignals(true);
    setRange(0, static_cast<int>(std::ceil(kPerSecond * end)));
    blockSignals(blocked);
    update();
}

void FilmTrack::showTime(double time) {
    if (time == time_) {
        return;
    }
    time_ = time;
    const bool blocked = blockSignals(true);
    setValue(static_cast<int>(std::lround(kPerSecond * time)));
    blockSignals(blocked);
    update();
}

double FilmTrack::placeOf(double time) const {
    return end_ > 0 ? kSides + (width() - 2 * kSides) * std::clamp(time / end_, 0.0, 1.0) : kSides;
}

bool FilmTrack::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        auto* help = static_cast<QHelpEvent*>(event);
        QStringList words;
        for (const FilmMark& mark : marks_) {
            if (std::abs(placeOf(mark.time) - help->pos().x()) <= kTickReach) {
                words << mark.words + QStringLiteral(", ") + secondsText(mark.time);
            }
        }
        QToolTip::showText(help->globalPos(), words.join(u'\n'), this);
        return true;
    }
    return QAbstractSlider::event(event);
}

void FilmTrack::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double middle = height() / 2.0;
    const double now = placeOf(time_);
    painter.setPen(roundPen(theme().metal, 3));
    painter.drawLine(QPointF(kSides, middle), QPointF(width() - kSides, middle));
    painter.setPen(roundPen(theme().ink, 3));
    painter.drawLine(QPointF(kSides, middle), QPointF(now, middle));
    painter.setPen(roundPen(theme().ink, 1.5));
    for (const FilmMark& mark : marks_) {
        const double x = placeOf(mark.time);
        painter.drawLine(QPointF(x, middle - 7), QPointF(x, middle + 7));
    }
    if (hasFocus()) {
        painter.setPen(QPen(theme().focus, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(QPointF(now, middle), kKnob + 3, kKnob + 3);
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().ink);
    painter.drawEllipse(QPointF(now, middle), kKnob, kKnob);
}

void FilmTrack::seekTo(double x) {
    const double share = (x - kSides) / std::max(1.0, width() - 2 * kSides);
    setValue(static_cast<int>(std::lround(kPerSecond * end_ * std::clamp(share, 0.0, 1.0))));
}

void FilmTrack::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        seekTo(event->position().x());
    }
    event->accept();
}

void FilmTrack::mouseMoveEvent(QMouseEvent* event) {
    if ((event->buttons() & Qt::LeftButton) != 0) {
        seekTo(event->position().x());
    }
    event->accept();
}

void FilmTrack::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_PageUp:  // later is to the right
            triggerAction(SliderPageStepSub);
            return;
        case Qt::Key_PageDown:
            triggerAction(SliderPageStepAdd);
            return;
        default:
            QAbstractSlider::keyPressEvent(event);
    }
}

void FilmTrack::wheelEvent(QWheelEvent* event) {
    event->ignore();  // the page scrolls
}

FilmBar::FilmBar(FilmPlayer& player, QWidget* parent)
    : QWidget(parent), player_(player), button_(new PlayButton(this)), track_(new FilmTrack(this)) {
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(14, 4, 14, 6);
    line->setSpacing(4);
    line->addWidget(button_);
    addSpeeds();
    line->addWidget(track_, 1);
    connect(button_, &QAbstractButton::clicked, &player_, &FilmPlayer::toggle);
    connect(track_, &FilmTrack::sought, &player_, &FilmPlayer::seek);
    connect(&player_, &FilmPlayer::timeChanged, track_, &FilmTrack::showTime);
    connect(&player_, &FilmPlayer::playingChanged, button_, &PlayButton::showPlaying);
    connect(&player_, &FilmPlayer::stillChanged, this, &FilmBar::showStill);
}

void FilmBar::addSpeeds() {
    auto* group = new QButtonGroup(this);
    for (const FilmSpeed& each : kFilmSpeeds) {
        const QString words = QLatin1String(each.words);
        QAbstractButton* button =
            smallButton(words, speedWords(each.speed), tr("Plays %1").arg(speedWords(each.speed)), this);
        button->setCheckable(true);
        button->setChecked(each.speed == player_.speed());
        group->addButton(button);
        layout()->addWidget(button);
        connect(button, &QAbstractButton::clicked, &player_,
                [this, speed = each.speed] { player_.setSpeed(speed); });
    }
}

void FilmBar::showStill() {
    const bool still = player_.isKeptStill();
    button_->setEnabled(!still);
    button_->setToolTip(still ? tr("Kept still, as View, Keep pictures still says: drag the track instead")
                              : tr("Play (Space)"));
}

void FilmBar::showFilm(double end, std::vector<FilmMark> marks) {
    track_->showFilm(end, std::move(marks));
    track_->showTime(player_.time());
}

}  // namespace bolthole
