#include "widgets/board/hole_board_header.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QLocale>
#include <QPainter>
#include <QStandardItemModel>
#include <algorithm>

#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/words/field_words.h"
#include "widgets/words/length_words.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

bool hasCrosswiseCombination(const Car& car) {
    return std::ranges::any_of(car.links, [&](const Link& link) {
        return roleOf(link, car.rearTireRadius) == Role::crosswise &&
               (link.chassis.holes.size() > 1 || link.axle.holes.size() > 1);
    });
}

QString crosswiseLabel(const Car& car) {
    QString name;
    for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
        if (roleOf(car.links[static_cast<std::size_t>(link)], car.rearTireRadius) == Role::crosswise) {
            name = name.isEmpty() ? linkName(car, link) : HoleBoardHeader::tr("track bars and guides");
        }
    }
    if (!name.isEmpty()) {
        name[0] = name[0].toUpper();
    }
    return HoleBoardHeader::tr("%1 too").arg(name);
}

bool hasMirrorPairs(const Car& car) {
    return std::ranges::any_of(mirrorPartners(car), [](int partner) { return partner >= 0; });
}

}  // namespace

/// A quiet label that cuts its text where it has no room, rather than pushing its neighbors out; the tool tip
/// has it whole.
class CutLabel : public QWidget {
  public:
    explicit CutLabel(QWidget* parent) : QWidget(parent) {
        setFont(textFont(TextSize::small));
        setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    }

    void showText(const QString& text) {
        if (text != text_) {
            text_ = text;
            setToolTip(wrappedToolTip(text));
            setAccessibleName(text);
            update();
        }
    }
    [[nodiscard]] QSize sizeHint() const override { return {60, QFontMetrics(font()).height()}; }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setPen(theme().muted);
        painter.drawText(rect(), Qt::AlignVCenter | Qt::AlignLeft,
                         QFontMetrics(font()).elidedText(text_, Qt::ElideRight, width()));
    }

  private:
    QString text_;
};

namespace {

QHBoxLayout* rowIn(QWidget* widget) {
    auto* row = new QHBoxLayout(widget);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(10);
    return row;
}

}  // namespace

QString groupedNumber(std::uint64_t number) {
    return QLocale(QLocale::English, QLocale::UnitedStates).toString(static_cast<qulonglong>(number));
}

HoleBoardHeader::HoleBoardHeader(QWidget* parent)
    : QWidget(parent),
      layout_(new QBoxLayout(QBoxLayout::LeftToRight, this)),
      first_(new QWidget(this)),
      second_(new QWidget(this)),
      counts_(new CutLabel(first_)),
      sides_(new QCheckBox(tr("Left and right together"), first_)),
      crosswise_(new QCheckBox(first_)),
      lengths_(new CalmCombo(second_)),
      text_(new QLineEdit(second_)),
      noProblems_(new QCheckBox(tr("No problems"), second_)),
      targetOnly_(new QCheckBox(tr("In target only"), second_)) {
    layout_->setContentsMargins(0, 0, 0, 0);
    layout_->setSpacing(6);
    layout_->addWidget(first_, 1);
    layout_->addWidget(second_);
    buildCounts();
    buildScope();
    buildLengths();
    buildFilter();
}

void HoleBoardHeader::buildCounts() {
    counts_->setObjectName(QStringLiteral("boardCounts"));
    QHBoxLayout* row = rowIn(first_);
    row->addWidget(counts_, 1);
    row->addWidget(sides_);
    row->addWidget(crosswise_);
}

void HoleBoardHeader::buildScope() {
    sides_->setObjectName(QStringLiteral("sidesTogether"));
    crosswise_->setObjectName(QStringLiteral("crosswiseToo"));
    sides_->setToolTip(
        wrappedToolTip(tr("A left and a right link that are alike move to the same holes together. "
                          "Off: each side is varied by itself.")));
    crosswise_->setToolTip(wrappedToolTip(
        tr("Vary the holes of the track bar or guide as well. Off: it stays where it is bolted.")));
    const auto choose = [this] {
        if (!showing_) {
            emit scopeChosen({.tieSides = sides_->isChecked(), .crosswise = crosswise_->isChecked()});
        }
    };
    connect(sides_, &QCheckBox::toggled, this, choose);
    connect(crosswise_, &QCheckBox::toggled, this, choose);
    sides_->hide();
    crosswise_->hide();
}

void HoleBoardHeader::buildLengths() {
    lengths_->setObjectName(QStringLiteral("lengthTreatment"));
    lengths_->setAccessibleName(tr("What happens to the links' lengths"));
    for (const LengthTreatment lengths : kLengthTreatments) {
        lengths_->addItem(lengthsLabel(lengths));
        lengths_->setItemData(lengths_->count() - 1, wrappedToolTip(lengthsHelp(lengths)), Qt::ToolTipRole);
    }
    connect(lengths_, &QComboBox::activated, this, [this](int index) {
        lengths_->setToolTip(wrappedToolTip(lengthsHelp(kLengthTreatments[static_cast<std::size_t>(index)])));
        emit lengthsChosen(kLengthTreatments[static_cast<std::size_t>(index)]);
    });
    rowIn(second_)->addWidget(lengths_);
}

void HoleBoardHeader::buildFilter() {
    text_->setObjectName(QStringLiteral("combinationFilter"));
    text_->setPlaceholderText(tr("Filter"));
    text_->setAccessibleName(tr("Filter combinations"));
    text_->setToolTip(wrappedToolTip(
        tr("Words that must stand in the names of the holes or in the problem: top low, or thread")));
    text_->setClearButtonEnabled(true);
    text_->setMinimumWidth(90);
    text_->setMaximumWidth(150);
    noProblems_->setObjectName(QStringLiteral("noProblems"));
    targetOnly_->setObjectName(QStringLiteral("targetOnly"));
    noProblems_->setToolTip(wrappedToolTip(tr("Only combinations without a problem.")));
    for (QWidget* part : std::initializer_list<QWidget*>{text_, noProblems_, targetOnly_}) {
        second_->layout()->addWidget(part);
    }
    connect(text_, &QLineEdit::textChanged, this, &HoleBoardHeader::filterChanged);
    connect(noProblems_, &QCheckBox::toggled, this, &HoleBoardHeader::filterChanged);
    connect(targetOnly_, &QCheckBox::toggled, this, &HoleBoardHeader::filterChanged);
}

CombinationFilter HoleBoardHeader::filter() const {
    return {.text = text_->text().trimmed(),
            .noProblems = noProblems_->isChecked(),
            .targetOnly = targetOnly_->isChecked()};
}

void HoleBoardHeader::showBoard(const BoardState& board, bool hasTarget, std::size_t shown) {
    showing_ = true;
    showLengths(board);
    showScope(board);
    targetOnly_->setEnabled(hasTarget);
    targetOnly_->setToolTip(wrappedToolTip(hasTarget
                                               ? tr("Only combinations inside the target window.")
                                               : tr("No target is set yet: drag a window on the map.")));
    showing_ = false;
    showCount(board, shown);
    fold();
}

void HoleBoardHeader::showLengths(const BoardState& board) {
    const auto index = static_cast<int>(board.lengths);
    lengths_->setEnabled(board.car != nullptr);
    lengths_->setCurrentIndex(index);
    lengths_->setToolTip(wrappedToolTip(lengthsHelp(board.lengths)));
    if (board.car == nullptr || board.car == car_) {
        return;
    }
    const bool canSetUppers = hasUpperRod(*board.car);
    const int uppers = static_cast<int>(LengthTreatment::uppers);
    qobject_cast<QStandardItemModel*>(lengths_->model())->item(uppers)->setEnabled(canSetUppers);
    lengths_->setItemData(uppers,
                          wrappedToolTip(canSetUppers ? lengthsHelp(LengthTreatment::uppers)
                                                      : tr("This car has no upper link to refit.")),
                          Qt::ToolTipRole);
}

void HoleBoardHeader::showScope(const BoardState& board) {
    sides_->setChecked(board.scope.tieSides);
    crosswise_->setChecked(board.scope.crosswise);
    if (board.car == nullptr || board.car == car_) {
        return;
    }
    car_ = board.car;
    sides_->setVisible(hasMirrorPairs(*car_));
    crosswise_->setVisible(hasCrosswiseCombination(*car_));
    crosswise_->setText(crosswiseLabel(*car_));
}

void HoleBoardHeader::showCount(const BoardState& board, std::size_t shown) {
    if (board.car == nullptr) {
        counts_->showText({});
        return;
    }
    const QString words = QString::fromUtf8(wordsFor(board.lengths).data());
    QString text = board.total == 1 ? tr("1 combination, %1").arg(words)
                                    : tr("%1 combinations, %2").arg(groupedNumber(board.total), words);
    if (board.mayCompute && !board.complete && board.combinations.size() < board.total) {
        text = tr("%1 of %2, %3")
                   .arg(groupedNumber(board.combinations.size()), groupedNumber(board.total), words);
    }
    if (shown < board.combinations.size()) {
        text = tr("%1 shown; ").arg(groupedNumber(shown)) + text;
    }
    const QString unmeasured =
        board.lengths == LengthTreatment::keep ? workedOutLengthsWords(*board.car) : QString();
    // First, as what has no room at the end is cut.
    counts_->showText(unmeasured.isEmpty() ? text : capitalized(unmeasured) + QStringLiteral("; ") + text);
}

// Narrow enough for two rows, whatever the row it is in now.
QSize HoleBoardHeader::minimumSizeHint() const {
    const QSize first = first_->minimumSizeHint();
    const QSize second = second_->minimumSizeHint();
    const bool folded = layout_->direction() == QBoxLayout::TopToBottom;
    return {std::max(first.width(), second.width()),
            folded ? first.height() + layout_->spacing() + second.height()
                   : std::max(first.height(), second.height())};
}

void HoleBoardHeader::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fold();
}

// Side by side where the counts keep room to be read.
void HoleBoardHeader::fold() {
    constexpr int kCountsRoom = 130;
    const int wanted = first_->sizeHint().width() + kCountsRoom + second_->sizeHint().width();
    const auto direction = wanted <= width() ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom;
    if (layout_->direction() != direction) {
        layout_->setDirection(direction);
        updateGeometry();
    }
}

}  // namespace bolthole
