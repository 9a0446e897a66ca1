#include "widgets/curves/curve_chart.h"

#include <QAbstractButton>
#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/picture_copy.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kChartWideGap = 8;  // between cards
constexpr double kChartNarrowGap = 5;
constexpr int kChartNarrow = 640;         // px; a widget narrower than this
constexpr double kChartSidePad = 8;       // between card and plot
constexpr double kChartValueLabels = 40;  // left of a plot whose values run up
constexpr double kChartKeyWidth = 190;    // of a key beside the plot
constexpr double kChartPlotGap = 9;       // above the plot
constexpr double kChartStackFoot = 8;     // below a plot that has no labels there

}  // namespace

CurveChart::CurveChart(const QString& name, const ChartLook& look, QWidget* parent)
    : QWidget(parent), look_(look), type_(std::make_unique<CardType>()) {
    setFocusPolicy(look.hasCursor || look.canZoom || look.picksPoints ? Qt::StrongFocus : Qt::NoFocus);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(name);
    wayBack_ = smallButton(tr("Whole range"), tr("Show the whole range"),
                           tr("Show the whole range again (Escape)"), this);
    wayBack_->hide();
    connect(wayBack_, &QAbstractButton::clicked, this, [this] {
        setView(std::nullopt);
        setFocus();
    });
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &CurveChart::dress);
    offerPicture(*this, !look.canZoom);
}

CurveChart::~CurveChart() = default;

void CurveChart::dress() {
    *type_ = CardType();
    for (ChartCardOnScreen& card : onScreen_) {
        card.forgetFace();
    }
    layOut();
    updateGeometry();
}

void CurveChart::showCards(const ChartAxis& axis, const std::vector<ChartCard>& cards) {
    if (axis.kind != axis_.kind || (view_ && (view_->least < axis.low || view_->most > axis.high))) {
        view_.reset();
    }
    axis_ = axis;
    cards_ = cards;
    hovered_ = {};
    pressed_ = {};
    picked_ = {};
    onScreen_.resize(cards_.size());
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        onScreen_[card].take(cards_[card], isMoving_);
    }
    if (look_.hasCursor) {
        setCursor(axis_.isUpright ? Qt::SizeVerCursor : Qt::SizeHorCursor);
    }
    readValues();
    layOut();
}

void CurveChart::showCursor(double imposed) {
    cursor_ = imposed;
    cursorWords_.clear();
    readValues();
    update();
}

void CurveChart::showCursor(double imposed, const std::vector<std::vector<ChartValue>>& values,
                            const QString& words) {
    cursor_ = imposed;
    cursorWords_ = words;
    values_ = values;
    describeInWords();
    update();
}

void CurveChart::readValues() {
    values_.resize(cards_.size());
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        values_[card].clear();
        for (const ChartSeries& series : cards_[card].series) {
            values_[card].push_back(valueWithWords(cards_[card], series, cursor_));
        }
    }
    describeInWords();
}

void CurveChart::describeInWords() {
    QStringList parts;
    for (std::size_t card = 0; card < std::min(cards_.size(), values_.size()); ++card) {
        for (std::size_t i = 0; i < std::min(cards_[card].series.size(), values_[card].size()); ++i) {
            const ChartSeries& series = cards_[card].series[i];
            const QString& spoken = values_[card][i].spoken;
            if (!series.isGhost && !series.name.isEmpty() && !spoken.isEmpty()) {
                parts << spoken << values_[card][i].baseline.mid(0, 1);
            }
        }
    }
    if (picked_.isThere()) {
        setAccessibleDescription(pointWords(picked_.card, picked_.at.series, picked_.at.point)
                                     .replace(QLatin1Char('\n'), QStringLiteral(", ")));
    } else if (look_.picksPoints) {
        setAccessibleDescription(hasCurves() || cards_.empty() ? message_ : cards_.front().absent);
    }
    if (!look_.hasCursor) {
        return;  // there is nothing to say that would not be said better beside it
    }
    const QString nothing = axis_.kind == ChartAxis::Kind::travel ? tr("out of reach") : tr("no figures");
    QString words = message_;
    if (hasCurves()) {
        words += (words.isEmpty() ? QString() : QStringLiteral(". ")) +
                 tr("At %1: %2")
                     .arg(cursorWords_.isEmpty() ? axis_.words(cursor_) : cursorWords_,
                          parts.isEmpty() ? nothing : parts.join(QStringLiteral(", ")));
    }
    if (std::ranges::any_of(cards_, &ChartCard::restsOnStarts)) {
        words += tr("; some of it rests on starting numbers");
    }
    setAccessibleDescription(words);
}

void CurveChart::showPicked(int card, int series, int point) {
    picked_ = {card, {series, point}};
    describeInWords();
    update();
}

void CurveChart::setFaded(bool faded) {
    if (faded_ != faded) {
        faded_ = faded;
        showFreshBody();
    }
}

void CurveChart::showMessage(const QString& words) {
    if (message_ != words) {
        message_ = words;
        describeInWords();
        update();
    }
}

bool CurveChart::hasCurves() const {
    return std::ranges::any_of(cards_, [](const ChartCard& card) { return hasValues(card); });
}

// As many rows in every card as the one with the longest key needs, so that all plots line up.
double CurveChart::header() const {
    const double below = type_->withBaseline ? type_->quietMetrics.height() : 0.0;
    const double name = keysInTwoLines_ ? type_->quietMetrics.height() : 0.0;
    double values = 0;
    for (const ChartCard& card : cards_) {
        const std::size_t rows = ChartCardOnScreen::keyRows(card);
        const bool hasNames = look_.head != ChartLook::Head::figure || rows > 1;
        values = std::max(values, static_cast<double>(rows) *
                                      ((hasNames ? name : 0.0) + type_->bodyMetrics.height() + below));
    }
    if (look_.head == ChartLook::Head::beside) {
        values = 0;
    }
    const double title =
        look_.head == ChartLook::Head::none ? 0.0 : type_->titleMetrics.height() + CardType::kRowGap + values;
    return std::ceil(CardType::kTopPad + title + kChartPlotGap);
}

// Of cards side by side all plots line up.
double CurveChart::headerOf(std::size_t card) const {
    double words = 0;
    for (std::size_t each = 0; each < cards_.size() && !axis_.isUpright; ++each) {
        if (!look_.isStacked || each == card) {
            words = std::max(words, ChartCardOnScreen::wordsAbove(cards_[each], *type_));
        }
    }
    return header() + words;
}

int CurveChart::footer() const {
    const bool hasLowerRow = !axis_.isUpright && !(axis_.groups.empty() && axis_.title.isEmpty());
    return type_->footer() + (hasLowerRow ? type_->lowerRow() : 0);
}

double CurveChart::gutter() const {
    if (!axis_.isUpright || !look_.labelsImposed) {
        return 0;
    }
    double widest = type_->quietMetrics.horizontalAdvance(QStringLiteral("−100"));
    const auto take = [&](const QString& words) {
        widest = std::max(widest, type_->quietMetrics.horizontalAdvance(words));
    };
    for (const ImposedLabel& label : axis_.labels) {
        take(label.text);
    }
    if (axis_.kind == ChartAxis::Kind::number) {
        take(axis_.words(axis_.low));
        take(axis_.words(axis_.high));
    }
    take(axis_.title);
    return widest + 8;
}

QRect CurveChart::plotArea() const {
    const int top = static_cast<int>(header());
    if (axis_.isUpright || onScreen_.empty()) {
        return rect().adjusted(static_cast<int>(std::ceil(gutter() + kChartSidePad)), top,
                               -static_cast<int>(kChartSidePad), -footer());
    }
    return onScreen_.front().plot().area.toRect();
}

void CurveChart::placeCard(std::size_t card, const QRectF& frame) {
    const double left = axis_.isUpright ? kChartSidePad : kChartValueLabels;
    const double right = look_.head == ChartLook::Head::beside ? kChartKeyWidth + 2 * kChartSidePad
                                                               : kChartSidePad + (axis_.isUpright ? 0 : 2);
    const bool hasFoot = axis_.isUpright || look_.labelsImposed;
    const QRectF plot = frame.adjusted(left, headerOf(card), -right, hasFoot ? -footer() : -kChartStackFoot);
    onScreen_[card].place(frame, plot, axis_, shownFrom(), shownTo(), *type_);
}

double CurveChart::gap() const {
    return width() < kChartNarrow ? kChartNarrowGap : kChartWideGap;
}

// Of the room of cards side by side, with their gaps.
double CurveChart::cardEdge(std::size_t card) const {
    double baseline = 0;
    double all = 0;
    for (std::size_t each = 0; each < cards_.size(); ++each) {
        baseline += each < card ? cards_[each].share : 0;
        all += cards_[each].share;
    }
    const double from = std::ceil(gutter());
    const double room = width() - from - gap() * (static_cast<double>(cards_.size()) - 1);
    return std::floor(room * baseline / all) + from + gap() * static_cast<double>(card);
}

// Names of curves that have no room beside their values stand above them.
bool CurveChart::needsTwoLines() const {
    if (look_.head != ChartLook::Head::figure || look_.isStacked) {
        return false;
    }
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        const double width = cardEdge(card + 1) - gap() - cardEdge(card);
        if (width < ChartCardOnScreen::keyWidth(cards_[card], *type_)) {
            return true;
        }
    }
    return false;
}

// Edges on whole pixels.
void CurveChart::placeSideBySide() {
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        const double left = cardEdge(card);
        placeCard(card, QRectF(left, 0, cardEdge(card + 1) - gap() - left, height()));
    }
}

// Plots share what is left of the height when every card has its head and its labels: of a stack that is
// scrolled the last one may be out of sight.
void CurveChart::placeStacked() {
    const double foot = look_.labelsImposed ? footer() : kChartStackFoot;
    double shares = 0;
    double heads = 0;
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        shares += cards_[card].share;
        heads += headerOf(card) + foot;
    }
    const double room = height() - heads - kChartWideGap * (static_cast<double>(cards_.size()) - 1);
    double top = 0;
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        const double high =
            headerOf(card) + std::max(std::floor(room * cards_[card].share / shares), 10.0) + foot;
        placeCard(card, QRectF(0, top, width(), high));
        top += high + kChartWideGap;
    }
}

void CurveChart::layOut() {
    type_->withBaseline = std::ranges::any_of(cards_, &ChartCard::hasBaseline);
    keysInTwoLines_ = needsTwoLines();
    look_.isStacked && !axis_.isUpright ? placeStacked() : placeSideBySide();
    ticks_.clear();
    if (!onScreen_.empty()) {
        const ChartPlot& plot = onScreen_.front().plot();
        ticks_ = imposedTicks(
            axis_,
            {shownFrom(), shownTo(), plot.imposedPosition(shownFrom()), plot.imposedPosition(shownTo())},
            type_->quietMetrics);
        std::erase_if(ticks_, [this](const ImposedLabel& tick) {
            return tick.at < shownFrom() || tick.at > shownTo();
        });
    }
    placeWayBack();
    showFreshBody();
    if (announced_ != plotArea()) {
        announced_ = plotArea();
        emit plotAreaChanged(announced_);
    }
}

void CurveChart::placeWayBack() {
    wayBack_->setVisible(isZoomed() && !onScreen_.empty());
    if (isZoomed() && !onScreen_.empty()) {
        // Beside the value that is shown large; a key's values stand there, so then below.
        const QRectF& area = onScreen_.front().plot().area;
        const bool isInHead = look_.head == ChartLook::Head::figure;
        wayBack_->adjustSize();
        wayBack_->move(static_cast<int>(area.right()) - wayBack_->width(),
                       static_cast<int>(area.top()) + (isInHead ? -wayBack_->height() - 4 : 4));
    }
}

QSize CurveChart::minimumSizeHint() const {
    return {look_.leastSize.width(),
            std::max(look_.leastSize.height(),
                     static_cast<int>(cards_.empty() ? header() : headerOf(0)) + footer() + 60)};
}

void CurveChart::showFreshBody() {
    bodyIsNew_ = true;
    bodyIsKept_ = false;
    update();
}

ChartScene CurveChart::scene() const {
    return {*type_, look_, axis_, ticks_, ring_, faded_ ? 0.4 : 1.0, keysInTwoLines_, baselineForm()};
}

// The narrowest card and the longest words decide for all, so that no two say it in different words.
qsizetype CurveChart::baselineForm() const {
    qsizetype form = 0;
    const std::size_t cards = type_->withBaseline ? std::min(onScreen_.size(), values_.size()) : 0;
    for (std::size_t card = 0; card < cards; ++card) {
        for (const ChartValue& value : values_[card]) {
            form = std::max(form, onScreen_[card].baselineForm(*type_, value.baseline));
        }
    }
    return form;
}

void CurveChart::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (bodyIsNew_ || !takesPixels(painter)) {
        paintBody(painter);
        bodyIsNew_ = false;
    } else {
        if (!bodyIsKept_ || body_.devicePixelRatio() != devicePixelRatioF()) {
            body_ = QPixmap(size() * devicePixelRatioF());
            body_.setDevicePixelRatio(devicePixelRatioF());
            QPainter picture(&body_);
            picture.setRenderHint(QPainter::Antialiasing);
            paintBody(picture);
            bodyIsKept_ = true;
        }
        painter.drawPixmap(0, 0, body_);
    }
    paintCursor(painter);
    paintChosen(painter);
    paintMessage(painter);
}

void CurveChart::paintBody(QPainter& painter) {
    painter.fillRect(rect(), theme().*look_.ground);
    const ChartScene with = scene();
    for (std::size_t card = 0; card < onScreen_.size(); ++card) {
        onScreen_[card].paintFace(painter, with);
        onScreen_[card].paintBody(painter, with);
    }
    paintGutter(painter);
}

void CurveChart::paintGutter(QPainter& painter) const {
    if (gutter() <= 0 || onScreen_.empty()) {
        return;
    }
    painter.setFont(type_->quiet);
    painter.setPen(theme().muted);
    const double height = type_->quietMetrics.height();
    painter.drawText(QRectF(0, CardType::kTopPad, gutter() - 5, type_->titleMetrics.height()),
                     Qt::AlignRight | Qt::AlignVCenter, axis_.title);
    for (const ImposedLabel& tick : ticks_) {
        const double y = onScreen_.front().plot().imposedPosition(tick.at);
        painter.drawText(QRectF(0, y - height / 2, gutter() - 5, height), Qt::AlignRight | Qt::AlignVCenter,
                         tick.text);
    }
}

void CurveChart::paintCursor(QPainter& painter) const {
    if (!look_.hasCursor || !hasCurves()) {
        return;
    }
    const bool isReached = std::ranges::any_of(values_, [](const std::vector<ChartValue>& card) {
        return std::ranges::any_of(card, [](const ChartValue& at) { return std::isfinite(at.value); });
    });
    painter.setPen(linePen(ChartLine::dotted, 1.2, isReached ? theme().ink : theme().muted));
    const bool isShown = cursor_ >= shownFrom() && cursor_ <= shownTo();
    if (isShown && axis_.isUpright) {
        const double y = std::floor(onScreen_.front().plot().imposedPosition(cursor_)) + 0.5;
        painter.drawLine(QPointF(gutter(), y), QPointF(width(), y));
    } else if (isShown) {
        for (const ChartCardOnScreen& card : onScreen_) {
            const double x = std::floor(card.plot().imposedPosition(cursor_)) + 0.5;
            painter.drawLine(QPointF(x, card.plot().area.top()), QPointF(x, card.plot().area.bottom()));
        }
    }
    const ChartScene with = scene();
    for (std::size_t card = 0; card < std::min(onScreen_.size(), values_.size()); ++card) {
        onScreen_[card].paintCursor(painter, with, cursor_, values_[card]);
    }
}

// What is hovered, and the stretch that is being chosen to zoom to.
void CurveChart::paintChosen(QPainter& painter) const {
    if (hovered_.isThere()) {
        const auto card = static_cast<std::size_t>(hovered_.card);
        const auto series = static_cast<std::size_t>(hovered_.at.series);
        if (cards_[card].series[series].marksPoints) {
            onScreen_[card].paintHit(painter, hovered_.at, false);
        }
    }
    if (picked_.isThere()) {
        onScreen_[static_cast<std::size_t>(picked_.card)].paintHit(painter, picked_.at, true);
    }
    if (!chosen_) {
        return;
    }
    for (const ChartCardOnScreen& card : onScreen_) {
        const ChartPlot& plot = card.plot();
        const QRectF zone =
            QRectF(plot.imposedLine(chosen_->least).p1(), plot.imposedLine(chosen_->most).p2()).normalized();
        painter.setPen(QPen(theme().focus, 1));
        painter.setBrush(faded(theme().focus, 0.12));
        painter.drawRect(zone & plot.area);
        painter.setBrush(Qt::NoBrush);
    }
}

// Below the middle, clear of the stretches out of reach at the ends and of the cursor at ride.
void CurveChart::paintMessage(QPainter& painter) const {
    if (message_.isEmpty()) {
        return;
    }
    const QRectF plots = QRectF(plotArea());
    const QRectF room = plots.adjusted(10, hasCurves() ? 0.62 * plots.height() : 0, -10, -10);
    const int flags = static_cast<int>(Qt::TextWordWrap) |
                      static_cast<int>(Qt::AlignHCenter | (hasCurves() ? Qt::AlignTop : Qt::AlignVCenter));
    painter.setFont(type_->quiet);
    const QRectF box = painter.boundingRect(room, flags, message_).adjusted(-10, -6, 10, 6);
    painter.setPen(QPen(theme().problem, 1));
    painter.setBrush(theme().card);
    painter.drawRoundedRect(box, 5, 5);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(theme().ink);
    painter.drawText(room, flags, message_);
}

QString CurveChart::keyName(std::size_t card, std::size_t series) const {
    return onScreen_[card].keyName(scene(), cards_[card].series[series], values_[card][series]);
}

QString CurveChart::pointWords(int card, int series, int point) const {
    const ChartCard& of = cards_[static_cast<std::size_t>(card)];
    const ChartSeries& line = of.series[static_cast<std::size_t>(series)];
    if (point < line.pointWords.size()) {
        return line.pointWords[point];
    }
    const ChartPoint& at = line.points[static_cast<std::size_t>(point)];
    QString value = valueText(of, at.value);
    if (std::isfinite(at.low) && std::isfinite(at.high)) {
        value += tr(" (%1 to %2)").arg(valueText(of, at.low), valueText(of, at.high));
    }
    const QString unit = of.unitText.isEmpty() ? QString() : QLatin1Char(' ') + of.unitText;
    return tr("%1, %2: %3").arg(line.name, axis_.words(at.imposed), value + unit);
}

void CurveChart::resizeEvent(QResizeEvent*) {
    layOut();
}

}  // namespace bolthole
