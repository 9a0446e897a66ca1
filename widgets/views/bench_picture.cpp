#include "widgets/views/bench_picture.h"

#include <QAccessible>
#include <QApplication>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QPixmap>
#include <QStyleOptionToolButton>
#include <QToolButton>
#include <QToolTip>
#include <algorithm>

#include "widgets/kit/kept_words.h"

namespace bolthole {

namespace {

constexpr double kMargin = 34;  // pixels around a fitted box

/// A button whose look is kept as a picture: it lies on a picture that is painted anew in every step of a
/// drag, and so is what lies on it.
class KeptButton : public QToolButton {
  public:
    using QToolButton::QToolButton;

  protected:
    void paintEvent(QPaintEvent*) override {
        QStyleOptionToolButton option;
        initStyleOption(&option);
        const Look look{option.state, size(), devicePixelRatioF(), palette().cacheKey(), font()};
        if (pixels_.isNull() || look != look_) {
            look_ = look;
            pixels_ = QPixmap(size() * devicePixelRatioF());
            pixels_.setDevicePixelRatio(devicePixelRatioF());
            pixels_.fill(Qt::transparent);
            option.font = wholeFont();
            QPainter painter(&pixels_);
            painter.setPen(palette().color(foregroundRole()));
            style()->drawComplexControl(QStyle::CC_ToolButton, &option, &painter, this);
        }
        QPainter(this).drawPixmap(0, 0, pixels_);
    }

  private:
    // On a picture a font takes what was not set of it from the application's, not from the button's.
    [[nodiscard]] QFont wholeFont() const {
        QFont whole = font();
        whole.setFamilies(whole.families());
        whole.setPointSizeF(whole.pointSizeF());
        whole.setWeight(whole.weight());
        return whole;
    }
    struct Look {
        QStyle::State state;
        QSize size;
        double ratio = 1;
        qint64 colors = 0;
        QFont font;
        bool operator==(const Look&) const = default;
    };
    Look look_;
    QPixmap pixels_;
};

}  // namespace

BenchPicture::BenchPicture(ViewPlane plane, const QString& allTip, QWidget* parent)
    : QWidget(parent), plane_(plane) {
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_OpaquePaintEvent);
    addButtons(allTip);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void BenchPicture::addButtons(const QString& allTip) {
    const auto add = [this](const QString& text, const QString& name, const QString& tip, auto action) {
        auto* button = new KeptButton(this);
        button->setText(text);
        button->setToolTip(tip);
        button->setAccessibleName(name);
        button->setFocusPolicy(Qt::TabFocus);
        button->setCursor(Qt::ArrowCursor);
        connect(button, &QToolButton::clicked, this, action);
        buttons_.push_back(button);
    };
    constexpr double kPress = 1.15 * 1.15;
    add(tr("Links"), tr("Show the links"), tr("Show the rear links as large as they fit (L)"),
        [this] { showLinks(); });
    add(tr("All"), tr("Show all"), allTip, [this] { showAll(); });
    add(QStringLiteral("+"), tr("Zoom in"), tr("Zoom in (+, or the mouse wheel)"),
        [this] { zoomBy(kPress, rect().center()); });
    add(QStringLiteral("\u2212"), tr("Zoom out"), tr("Zoom out (-, or the mouse wheel)"),
        [this] { zoomBy(1 / kPress, rect().center()); });
}

void BenchPicture::placeButtons() {
    int left = 8;
    for (QToolButton* button : buttons_) {
        button->adjustSize();
        button->move(left, height() - button->height() - 8);
        left += button->width() + 4;
    }
}

void BenchPicture::keepFree(const QRect& place) {
    if (keptFree_ != place) {
        keptFree_ = place;
        update();
    }
}

void BenchPicture::setCaption(const QString& caption) {
    if (caption_ != caption) {
        caption_ = caption;
        for (QToolButton* button : buttons_) {
            button->setVisible(caption.isEmpty());
        }
        update();
    }
}

QRect BenchPicture::captionBox() const {
    const QSizeF size = sizeOfLine(textFont(TextSize::small, true), caption_);
    return {QPoint(10, 8), (size + QSizeF(10, 4)).toSize()};
}

void BenchPicture::keepFreeOf(PictureDrawing& drawing) const {
    if (!caption_.isEmpty()) {
        drawing.keepFree(captionBox());
    }
    for (const QToolButton* button : buttons_) {
        if (button->isVisibleTo(this)) {
            drawing.keepFree(button->geometry());
        }
    }
    if (!keptFree_.isEmpty()) {
        drawing.keepFree(keptFree_);
    }
}

void BenchPicture::showState(const BenchState& state) {
    const bool first = state_ == nullptr;
    state_ = &state;
    if (!(marks_.selected == state.selection)) {
        marks_.selected = state.selection;
        marks_.selectedMirrored = false;
        // Chosen in a field; what is chosen in another view has its tag there.
        marks_.tellsSelected = qobject_cast<BenchPicture*>(QApplication::focusWidget()) == nullptr;
    }
    points_.rebuild(state, plane_);
    rebuildHoles();
    if (!press_.down) {
        setHovered(pointer_ ? pointUnder(*pointer_) : Picked{});  // what moved away is pointed at no longer
    }
    if (first) {
        refit();
    } else {
        keepInPicture();
    }
    updateAccessibleText();
    update();
}

void BenchPicture::showLinks() {
    fitting_ = Fitting::links;
    refit();
}

void BenchPicture::showAll() {
    fitting_ = Fitting::all;
    refit();
}

QRectF BenchPicture::fittedBox() const {
    return fitting_ == Fitting::links ? boxOfLinks(*state_) : boxOfAll(*state_);
}

// What was to be seen no longer fits: other weights, another car. Never under a hand that holds something.
void BenchPicture::keepInPicture() {
    if (fitting_ == Fitting::byHand || press_.down || QGuiApplication::mouseButtons() != Qt::NoButton) {
        return;
    }
    constexpr double kEdge = 12;  // px; nearer to it a mark is drawn as one outside
    const QRectF box = fittedBox();
    const QRectF seen =
        QRectF(camera_.toPicture(box.topLeft()), camera_.toPicture(box.bottomRight())).normalized();
    if (!QRectF(rect()).adjusted(kEdge, kEdge, -kEdge, -kEdge).contains(seen)) {
        refit();
    }
}

void BenchPicture::refit() {
    if (state_ == nullptr || fitting_ == Fitting::byHand || width() < 50 || height() < 50) {
        return;
    }
    const QRectF box = fittedBox();
    // A tall view has sky to spare: lift the car a little, never so far that it floats.
    const double below = kMargin + 24 + std::max(0.0, 0.12 * (height() - 420.0));
    const QRectF room = QRectF(rect()).adjusted(kMargin, kMargin, -kMargin, -below);
    camera_.fit(box, room);
    if (plane_ == ViewPlane::top) {  // seen from above nothing stands on the ground: the middle is its place
        camera_.origin.ry() -= (room.height() - box.normalized().height() * camera_.scale) / 2;
    }
    update();
}

void BenchPicture::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    placeButtons();
    refit();
}

void BenchPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    if (state_ == nullptr) {
        painter.fillRect(rect(), theme().canvas);
        return;
    }
    marks_.keyboardFocus = hasFocus();
    edgeMarkers_ = paintPicture(painter, *state_);
    if (!caption_.isEmpty()) {
        painter.setFont(textFont(TextSize::small, true));
        painter.setPen(theme().muted);
        painter.fillRect(captionBox(), theme().canvas);
        drawLine(painter, captionBox(), Qt::AlignCenter, caption_);
    }
    if (ring_ && hasFocus()) {
        painter.setPen(QPen(theme().focus, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

QPointF BenchPicture::placeOf(const PointId& id, bool mirrored) const {
    for (const DrawnPoint& point : points_.points) {
        if (point.id == id && point.mirrored == mirrored) {
            return camera_.toPicture(point.at);
        }
    }
    return {};
}

void BenchPicture::setHovered(const Picked& point) {
    if (marks_.hovered == point.id && marks_.hoveredMirrored == point.mirrored) {
        return;
    }
    marks_.hovered = point.id;
    marks_.hoveredMirrored = point.mirrored;
    setCursor(point.id.kind == PointId::Kind::none ? Qt::ArrowCursor : Qt::PointingHandCursor);
    update();
}

// `tells`: its tag stays without the pointer.
void BenchPicture::select(const Picked& point, bool tells) {
    marks_.tellsSelected = tells;
    const bool other = !(marks_.selected == point.id);
    marks_.selected = point.id;
    marks_.selectedMirrored = point.mirrored;
    update();
    if (other) {
        emit selected(point.id);
    }
}

void BenchPicture::leaveEvent(QEvent* event) {
    pointer_.reset();
    if (!press_.down) {
        setHovered({});
    }
    QWidget::leaveEvent(event);
}

// The frame is for the keyboard: neither a click nor the window's own activation raises it.
void BenchPicture::focusInEvent(QFocusEvent* event) {
    ring_ = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason ||
            event->reason() == Qt::ShortcutFocusReason;
    update();
    QWidget::focusInEvent(event);
}

void BenchPicture::focusOutEvent(QFocusEvent* event) {
    ring_ = false;
    update();
    QWidget::focusOutEvent(event);
}

bool BenchPicture::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        showTip(help->pos(), help->globalPos());
        return true;
    }
    // Escape belongs to a drag under way before it belongs to any shortcut.
    if (event->type() == QEvent::ShortcutOverride && drag_.active &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void BenchPicture::showTip(QPoint place, QPoint onScreen) {
    const PointId id = pointUnder(place).id;
    if (id.kind == PointId::Kind::none) {
        QToolTip::hideText();
        return;
    }
    const bool used = id.kind == PointId::Kind::hole && state_ != nullptr &&
                      state_->car.links[static_cast<std::size_t>(id.link)].bracket(id.end).use == id.hole;
    QToolTip::showText(onScreen,
                       used || id.kind == PointId::Kind::joint
                           ? tr("Drag to move it; arrow keys nudge. Shift: one direction only. Alt: no "
                                "snapping.")
                           : tr("Click to bolt the link here; drag to move the hole."),
                       this, aroundPoint(place));
}

void BenchPicture::updateAccessibleText() {
    if (!QAccessible::isActive() || state_ == nullptr) {
        return;
    }
    const QString place = pointPlace(state_->car, state_->selection, state_->style);
    setAccessibleDescription(place.isEmpty()
                                 ? tr("No hole selected. Period and comma keys walk through the holes.")
                                 : pointName(state_->car, state_->selection) + QStringLiteral(": ") + place);
}

}  // namespace bolthole
