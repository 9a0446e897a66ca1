#include "widgets/fields/new_car_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QStyledItemDelegate>
#include <QVBoxLayout>
#include <algorithm>
#include <functional>
#include <tuple>
#include <utility>

#include "geometry/car/numbers.h"
#include "geometry/checks/warnings.h"
#include "geometry/edits/edit.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/views/layout_picture.h"

namespace bolthole {

namespace {

constexpr int kRowHeight = 96;
constexpr int kPicture = 132;  // px wide, each of the two
constexpr int kListWidth = 540;
constexpr int kFormWidth = 300;
constexpr std::array kAsked{Field::wheelbase, Field::rearTireRadius, Field::frontTireRadius};

struct LayoutWords {
    QString name;
    QString what;
};

LayoutWords wordsFor(LinkLayout layout) {
    switch (layout) {
        case LinkLayout::triangulatedFourLink:
            return {NewCarDialog::tr("Triangulated four-link"),
                    NewCarDialog::tr("The uppers run together at the axle and hold it laterally.")};
        case LinkLayout::parallelFourLink:
            return {NewCarDialog::tr("Parallel four-link"),
                    NewCarDialog::tr("Two lowers and two uppers along the car.")};
        case LinkLayout::threeLink:
            return {NewCarDialog::tr("Three-link"),
                    NewCarDialog::tr("Two lowers and one upper in the middle.")};
        case LinkLayout::ladderBars:
            return {NewCarDialog::tr("Ladder bars"),
                    NewCarDialog::tr("Two arms rigid with the axle, pinned at their fronts.")};
        case LinkLayout::torqueArm:
            break;
    }
    return {NewCarDialog::tr("Torque arm"),
            NewCarDialog::tr("Two lowers and an arm rigid with the axle, its front free fore and aft.")};
}

/// Pictures from the side and from above, name and a sentence.
class LayoutDelegate : public QStyledItemDelegate {
  public:
    /// `hold`: what the pictures are to show.
    LayoutDelegate(std::function<SidewaysHold()> hold, QObject* parent)
        : QStyledItemDelegate(parent), hold_(std::move(hold)) {}

    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
        return {kListWidth - 20, kRowHeight};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Theme& colors = theme();
        const QRectF row = QRectF(option.rect).adjusted(2, 2, -2, -2);
        const bool chosen = option.state.testFlag(QStyle::State_Selected);
        const bool focused = chosen && option.state.testFlag(QStyle::State_HasFocus);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        painter->setPen(QPen(chosen ? colors.focus : colors.border, focused ? 3 : chosen ? 2 : 1));
        painter->setBrush(colors.card);
        painter->drawRoundedRect(row, 5, 5);
        const auto layout = static_cast<LinkLayout>(index.data(Qt::UserRole).toInt());
        const Car car = startingCar({.layout = layout, .sideways = hold_()});
        const QRectF side(row.left() + 8, row.top() + 6, kPicture, row.height() - 12);
        drawLayout(*painter, side, car, LayoutSight::side);
        drawLayout(*painter, side.translated(kPicture + 10, 0), car, LayoutSight::plan);
        const double left = side.left() + 2 * kPicture + 24;
        paintWords(*painter, QRectF(left, row.top() + 10, row.right() - left - 8, row.height() - 20),
                   wordsFor(layout), chosen);
        painter->restore();
    }

  private:
    // The chosen one has a dot before its name too: not told by color alone.
    static void paintWords(QPainter& painter, const QRectF& box, const LayoutWords& words, bool chosen) {
        painter.setPen(theme().ink);
        painter.setFont(textFont(TextSize::title, true));
        const double line = painter.fontMetrics().height();
        painter.drawText(QRectF(box.topLeft(), QSizeF(box.width(), line)), Qt::AlignLeft,
                         chosen ? QStringLiteral("● ") + words.name : words.name);
        painter.setPen(theme().muted);
        painter.setFont(textFont(TextSize::small));
        painter.drawText(box.adjusted(0, line + 3, 0, 0), Qt::AlignLeft | Qt::TextWordWrap, words.what);
    }

    std::function<SidewaysHold()> hold_;
};

ToneLabel* wrapped(ToneLabel::Tone tone, const QString& text, QWidget* parent) {
    auto* label = new ToneLabel(tone, text, parent);
    label->setWordWrap(true);
    return label;
}

}  // namespace

NewCarDialog::NewCarDialog(NumberStyle style, QWidget* parent)
    : QDialog(parent), style_(style), list_(new QListWidget(this)) {
    setWindowTitle(tr("New car"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(16, 16, 16, 12);
    row->setSpacing(16);
    row->addWidget(list_, 1);
    row->addLayout(buildForm());
    buildList();
    refresh();
    list_->setFocus();
}

void NewCarDialog::buildList() {
    list_->setObjectName(QStringLiteral("layouts"));
    list_->setAccessibleName(tr("Layout of the rear links"));
    list_->setToolTip(tr("From the side and from above, front at right. Enter starts the car."));
    list_->setFrameShape(QFrame::NoFrame);
    list_->setFixedWidth(kListWidth);
    list_->setMinimumHeight(static_cast<int>(kLinkLayouts.size()) * kRowHeight + 4);
    list_->setItemDelegate(new LayoutDelegate([this] { return sidewaysChosen(); }, list_));
    for (const LinkLayout layout : kLinkLayouts) {
        const LayoutWords words = wordsFor(layout);
        auto* item = new QListWidgetItem(words.name, list_);
        item->setData(Qt::UserRole, static_cast<int>(layout));
        item->setData(Qt::AccessibleDescriptionRole, words.what);
    }
    list_->setCurrentRow(0);
    connect(list_, &QListWidget::currentRowChanged, this, &NewCarDialog::refresh);
    connect(list_, &QListWidget::itemDoubleClicked, this, &NewCarDialog::take);
}

QLayout* NewCarDialog::buildForm() {
    auto* column = new QVBoxLayout;
    column->setSpacing(6);
    title_ = new QLineEdit(this);
    title_->setMaxLength(200);
    title_->setAlignment(Qt::AlignRight);
    title_->setPlaceholderText(tr("what you call it"));
    title_->setAccessibleName(tr("title of the new car"));
    column->addWidget(new BoxRow(tr("Title"), title_, this));
    std::tie(sideways_, sidewaysRow_) =
        addCombo(column, tr("Held laterally by"), {tr("a track bar"), tr("a Watts linkage")});
    sidewaysWords_ = wrapped(ToneLabel::Tone::muted, tr("Its uppers hold the axle laterally."), this);
    sidewaysWords_->setContentsMargins(10, 0, 4, 2);
    column->addWidget(sidewaysWords_);
    const StartingCar usual;
    const QString radius =
        tr("Loaded radius: from the ground up to the center of the axle, the car's weight on it.");
    fields_ = {addField(column, tr("Wheelbase"), tr("wheelbase of the new car"),
                        tr("From the rear to the front wheel's center, along the ground."), usual.wheelbase),
               addField(column, tr("Rear tire radius"), tr("rear tire radius of the new car, loaded"), radius,
                        usual.rearTireRadius),
               addField(column, tr("Front tire radius"), tr("front tire radius of the new car, loaded"),
                        radius, usual.frontTireRadius)};
    for (std::size_t at = 0; at < fields_.size(); ++at) {
        fields_[at]->setHowToCall([this, field = kAsked[at]] { emit howToRequested({.field = field}); });
    }
    units_ = addCombo(column, tr("Units"), {tr("inch, pound"), tr("millimeter, kilogram")}).first;
    units_->setCurrentIndex(style_.units == Units::inch ? 0 : 1);
    connect(units_, &QComboBox::activated, this, &NewCarDialog::chooseUnits);
    connect(sideways_, &QComboBox::currentIndexChanged, this, &NewCarDialog::refresh);
    problem_ = wrapped(ToneLabel::Tone::problem, QString(), this);
    column->addWidget(problem_);
    column->addStretch(1);
    column->addWidget(wrapped(ToneLabel::Tone::plain,
                              tr("The rest are starting numbers: measure each one before you trust a figure. "
                                 "They come from common practice, not from any car."),
                              this));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* start = buttons->addButton(tr("&Start this car"), QDialogButtonBox::AcceptRole);
    start->setDefault(true);
    start_ = start;
    connect(buttons, &QDialogButtonBox::accepted, this, &NewCarDialog::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    title_->setMinimumWidth(kFormWidth / 2);
    return column;
}

NumberField* NewCarDialog::addField(QLayout* column, const QString& label, const QString& name,
                                    const QString& howTo, double value) {
    auto* field = new NumberField(Quantity::length, this);
    field->setAccessibleName(name);
    field->setHowTo(howTo);
    field->setCheck([](double typed) {
        const std::string expected = refusal({.field = Field::wheelbase}, typed);
        return expected.empty() ? expected : "expected " + expected;
    });
    field->showNumber(value, style_);
    auto* row = new NumberRow(label, field, this);
    row->setMinimumWidth(kFormWidth);
    column->addWidget(row);
    field->setOrigin(Origin::starting);
    connect(field, &NumberField::committed, field, [this, field](double typed) {
        markTyped(field);
        field->showNumber(typed, style_);
    });
    connect(field, &QLineEdit::textChanged, this, &NewCarDialog::refresh);
    connect(field, &NumberField::confirmed, this, [this] { focusNextChild(); });
    return field;
}

std::pair<CalmCombo*, QWidget*> NewCarDialog::addCombo(QLayout* column, const QString& label,
                                                       const QStringList& options) {
    auto* box = new CalmCombo(this);
    box->addItems(options);
    box->setAccessibleName(label);
    auto* row = new BoxRow(label, box, this);
    column->addWidget(row);
    return {box, row};
}

void NewCarDialog::chooseUnits(int index) {
    style_.units = index == 0 ? Units::inch : Units::metric;
    for (NumberField* field : fields_) {
        field->commit();
        field->showNumber(field->number(), style_);
    }
    refresh();
}

LinkLayout NewCarDialog::layoutChosen() const {
    return static_cast<LinkLayout>(list_->currentItem()->data(Qt::UserRole).toInt());
}

SidewaysHold NewCarDialog::sidewaysChosen() const {
    return sideways_->currentIndex() == 1 ? SidewaysHold::watts : SidewaysHold::trackBar;
}

std::optional<StartingCar> NewCarDialog::chosen() const {
    std::optional<StartingCar> asked = typed();
    return asked && refusal(*asked).empty() ? asked : std::nullopt;
}

std::optional<StartingCar> NewCarDialog::typed() const {
    std::array<double, 3> lengths{};
    for (std::size_t index = 0; index < fields_.size(); ++index) {
        const std::optional<double> typed = fields_[index]->typedNumber();
        if (!typed) {
            return std::nullopt;
        }
        lengths[index] = *typed;
    }
    return StartingCar{.layout = layoutChosen(),
                       .sideways = sidewaysChosen(),
                       .title = title_->text().trimmed().toStdString(),
                       .units = style_.units,
                       .wheelbase = lengths[0],
                       .rearTireRadius = lengths[1],
                       .frontTireRadius = lengths[2],
                       .typed = typedFields()};
}

std::vector<Field> NewCarDialog::typedFields() const {
    std::vector<Field> typed;
    for (std::size_t index = 0; index < kAsked.size(); ++index) {
        if (typed_[index] || fields_[index]->isEdited()) {
            typed.push_back(kAsked[index]);
        }
    }
    return typed;
}

void NewCarDialog::markTyped(const NumberField* field) {
    for (std::size_t index = 0; index < fields_.size() && !field->isStepping(); ++index) {
        typed_[index] = typed_[index] || fields_[index] == field;
        fields_[index]->setOrigin(typed_[index] ? Origin::measured : Origin::starting);
    }
}

void NewCarDialog::refresh() {
    if (start_ == nullptr || list_->currentItem() == nullptr) {
        return;  // still being built
    }
    const bool needsHold = needsSidewaysHold(layoutChosen());
    sidewaysRow_->setVisible(needsHold);
    sidewaysWords_->setVisible(!needsHold);
    const std::optional<StartingCar> asked = typed();
    const QString problem = asked ? QString::fromStdString(refusal(*asked)) : unreadField(fields_);
    problem_->showText(problem.isEmpty() ? problem : QStringLiteral("▲ ") + problem);
    problem_->setVisible(!problem.isEmpty());
    start_->setEnabled(problem.isEmpty());
    showDoubts(asked && problem.isEmpty() ? findWarnings(startingCar(*asked)) : std::vector<Warning>{});
    list_->viewport()->update();
}

// What the car's own fields would say of the three numbers once it is started.
void NewCarDialog::showDoubts(const std::vector<Warning>& warnings) {
    for (std::size_t at = 0; at < fields_.size(); ++at) {
        const auto found = std::ranges::find_if(warnings, [at](const Warning& warning) {
            return warning.id.field == kAsked[at] && !warning.isOfWhole;
        });
        fields_[at]->setWarning(found == warnings.end() ? QString()
                                                        : QString::fromStdString(sentence(found->finding)));
    }
}

void NewCarDialog::take() {
    if (chosen()) {
        accept();
    }
}

}  // namespace bolthole
