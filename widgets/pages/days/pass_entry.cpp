#include "widgets/pages/days/pass_entry.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QToolButton>
#include <QToolTip>

#include "geometry/compare/setup_changes.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/days/pass_table.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

constexpr int kHeight = 58;
constexpr int kCaption = 18;   // px over the fields
constexpr int kTextSide = 11;  // px of a table's cell left and right of its text

constexpr std::array kEntered{PassField::leftRearPressure, PassField::launchRpm, PassField::sixtyFoot,
                              PassField::threeThirty};
constexpr std::array kColumns{PassColumn::rearPressure, PassColumn::launchRpm, PassColumn::sixtyFoot,
                              PassColumn::threeThirty};

QLabel* makeLabel(ToneLabel::Tone tone, Qt::Alignment side, QWidget* parent) {
    auto* label = new ToneLabel(tone, {}, parent);
    label->setFont(textFont(TextSize::body));
    label->setAlignment(side | Qt::AlignVCenter);
    return label;
}

// The letter a run will have: that of one there was, or the next.
std::string letterFor(const PassBook& book, const RunWith& run, bool isKept) {
    const std::vector<RunWith>& runs = book.runs().runs;
    const auto found = std::ranges::find(runs, run);
    return letterOf(isKept ? static_cast<std::size_t>(found - runs.begin()) : runs.size());
}

}  // namespace

Pass nextPass(const std::vector<Pass>& passes, const QDateTime& now) {
    Pass next;
    next.date = now.toString(QStringLiteral("yyyy-MM-dd")).toStdString();
    next.time = now.toString(QStringLiteral("HH:mm")).toStdString();
    if (passes.empty()) {
        return next;
    }
    const Pass& last = passes.back();
    next.place = last.place;
    next.surface = last.surface;
    next.pressures = last.pressures;
    next.launchRpm = last.launchRpm;
    if (last.date == next.date) {
        next.air = last.air;
        next.number = last.number < kMostPassNumber ? last.number + 1 : last.number;
    } else {
        next.surface.temperature.reset();
    }
    return next;
}

PassEntry::PassEntry(const PassBook& book, const PassTable& table, QWidget* parent)
    : QWidget(parent),
      book_(book),
      table_(table),
      clock_([] { return QDateTime::currentDateTime(); }),
      number_(makeLabel(ToneLabel::Tone::plain, Qt::AlignRight, this)),
      time_(makeLabel(ToneLabel::Tone::muted, Qt::AlignRight, this)),
      letter_(makeLabel(ToneLabel::Tone::plain, Qt::AlignLeft, this)),
      changes_(makeLabel(ToneLabel::Tone::muted, Qt::AlignLeft, this)),
      rebound_(makeLabel(ToneLabel::Tone::muted, Qt::AlignRight, this)),
      hint_(makeLabel(ToneLabel::Tone::muted, Qt::AlignLeft, this)),
      details_(new QToolButton(this)) {
    setObjectName(QStringLiteral("passEntry"));
    setAccessibleName(tr("Next pass"));
    for (QLabel* strong : {number_, letter_}) {
        strong->setFont(textFont(TextSize::body, true));
    }
    hint_->setFont(textFont(TextSize::small));
    for (std::size_t at = 0; at < kEntered.size(); ++at) {
        auto* field = new PassNumberField(kEntered[at], this);
        field->installEventFilter(this);
        connect(field, &PassNumberField::problemChanged, this, &PassEntry::showHint);
        connect(field, &PassNumberField::howToRequested, this, &PassEntry::howToRequested);
        fields_[at] = field;
        captions_[at] = makeLabel(ToneLabel::Tone::muted, Qt::AlignRight, this);
        captions_[at]->setFont(textFont(TextSize::small));
        captions_[at]->setBuddy(field);
    }
    fields_[0]->setAccessibleName(tr("rear tire pressures"));
    details_->setText(tr("All fields…"));
    details_->setProperty("small", true);
    details_->setToolTip(
        tr("The whole form of the next pass: date, place, surface, air, times, what was seen"));
    details_->installEventFilter(this);
    connect(details_, &QToolButton::clicked, this, [this] { emit detailsRequested(pass()); });
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

QSize PassEntry::sizeHint() const {
    return {700, kHeight};
}

QSize PassEntry::minimumSizeHint() const {
    return {200, kHeight};
}

PassNumberField* PassEntry::field(PassField field) const {
    const auto* const found = std::ranges::find(kEntered, field);
    return found == kEntered.end() ? nullptr : fields_[static_cast<std::size_t>(found - kEntered.begin())];
}

void PassEntry::refresh(const Car& bench) {
    next_ = nextPass(book_.passes(), clock_());
    for (PassNumberField* field : fields_) {
        if (!field->isTyped()) {
            field->showNumber(numberOf(next_, field->field()), book_.units());
        }
    }
    // Unlike left and right stay so unless a number is typed.
    const EnteredCorners& tires = next_.pressures;
    if (tires.leftRear != tires.rightRear && !fields_[0]->isTyped()) {
        fields_[0]->showNumber(std::nullopt, book_.units());
        fields_[0]->setPlaceholderText(axlePressures(tires.leftRear, tires.rightRear, book_.units()));
    } else {
        fields_[0]->setPlaceholderText({});
    }
    number_->setText(QString::number(next_.number));
    time_->setText(tr("now"));
    rebound_->setText(clicksText(bench));
    showChanges(bench);
    showHint();
    alignToColumns();
}

void PassEntry::showChanges(const Car& bench) {
    const std::size_t count = book_.passes().size();
    const Car* last = count == 0 ? nullptr : book_.setupOf(count - 1);
    const bool isSame = last != nullptr && isSameSetup(*last, bench);
    RunWith run = runWith(next_);
    const std::optional<int> kept = isSame ? book_.passes().back().setup : keptSetup(bench);
    run.setup = kept.value_or(-1);
    letter_->setText(QString::fromStdString(letterFor(book_, run, kept.has_value())));
    QString words;
    if (isSame) {
        words = tr("as pass %1").arg(book_.passes().back().number);
    } else if (last == nullptr) {
        words = tr("the car as it stands");
    } else {
        QStringList changes;
        for (const std::string& change : setupChanges(*last, bench, book_.units())) {
            changes << changeText(change);
        }
        words = changes.isEmpty() ? tr("other entries") : changes.join(QStringLiteral(", "));
    }
    changesWords_ = words;
    changes_->setToolTip(words);
}

void PassEntry::showHint() {
    QString problem;
    for (const PassNumberField* field : fields_) {
        const QString each = field->typed().problem;
        if (problem.isEmpty() && !each.isEmpty()) {
            problem = QStringLiteral("▲ ") + field->accessibleName() + QStringLiteral(": ") + each;
        }
    }
    hint_->setText(problem.isEmpty() ? tr("Enter keeps it, Tab goes on, Esc leaves") : problem);
    hint_->setToolTip(problem);
}

bool PassEntry::isTyped() const {
    return std::ranges::any_of(fields_, [](const PassNumberField* field) { return field->isTyped(); });
}

Pass PassEntry::pass() const {
    Pass pass = next_;
    for (const PassNumberField* field : fields_) {
        if (field->isTyped()) {
            numberOf(pass, field->field()) = field->typed().value;
        }
    }
    if (fields_[0]->isTyped()) {
        pass.pressures.rightRear = pass.pressures.leftRear;
    }
    return pass;
}

// A copy of the last pass without a word of this one would be a pass nobody ran.
void PassEntry::take() {
    if (!isTyped()) {
        field(PassField::sixtyFoot)->setFocus(Qt::OtherFocusReason);
        return;
    }
    for (PassNumberField* field : fields_) {
        if (const QString problem = field->check().problem; !problem.isEmpty()) {
            showHint();
            field->setFocus(Qt::OtherFocusReason);
            // In a narrow window the hint has no room for it.
            QToolTip::showText(field->mapToGlobal(QPoint(0, field->height())), wrappedToolTip(problem),
                               field);
            return;
        }
    }
    next_ = nextPass(book_.passes(), clock_());  // the hour may have gone on since the row was shown
    emit entered(AddPass{pass()});
}

void PassEntry::commit() {
    const bool isReadable = std::ranges::all_of(
        fields_, [](const PassNumberField* field) { return field->typed().problem.isEmpty(); });
    if (field(PassField::sixtyFoot)->isTyped() && isReadable) {
        take();
    }
}

void PassEntry::restore() {
    for (PassNumberField* field : fields_) {
        field->showNumber(numberOf(next_, field->field()), book_.units());
    }
    showHint();
}

void PassEntry::enter() {
    PassNumberField* first = book_.passes().empty() ? fields_[0] : field(PassField::sixtyFoot);
    first->setFocus(Qt::ShortcutFocusReason);
    first->selectAll();
}

bool PassEntry::eventFilter(QObject* watched, QEvent* event) {
    const QEvent::Type type = event->type();
    if (type == QEvent::FocusIn || type == QEvent::FocusOut) {
        update();
    }
    const bool isKey = type == QEvent::KeyPress || type == QEvent::ShortcutOverride;
    if (!isKey || watched == details_) {
        return QWidget::eventFilter(watched, event);
    }
    const int key = static_cast<QKeyEvent*>(event)->key();
    const bool isOurs =
        key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Escape || key == Qt::Key_Up;
    if (!isOurs) {
        return QWidget::eventFilter(watched, event);
    }
    if (type == QEvent::ShortcutOverride) {
        event->accept();
        return true;
    }
    if (key == Qt::Key_Up) {
        emit left();
    } else if (key == Qt::Key_Escape) {
        restore();
        emit left();
    } else {
        take();
    }
    return true;
}

void PassEntry::alignToColumns() {
    const QHeaderView* header = table_.horizontalHeader();
    const int inset = table_.viewport()->mapTo(table_.parentWidget(), QPoint(0, 0)).x() - x();
    const auto box = [&](PassColumn column) {
        const int section = static_cast<int>(column);
        return QRect(inset + header->sectionViewportPosition(section), 4 + kCaption,
                     header->sectionSize(section), height() - 8 - kCaption);
    };
    const auto place = [&](QLabel* label, PassColumn column) {
        label->setGeometry(box(column).adjusted(kTextSide, 0, -kTextSide, 0));
    };
    place(number_, PassColumn::number);
    place(time_, PassColumn::time);
    place(letter_, PassColumn::setup);
    place(changes_, PassColumn::changes);
    place(rebound_, PassColumn::rebound);
    changes_->setText(changes_->fontMetrics().elidedText(changesWords_, Qt::ElideRight, changes_->width()));
    constexpr int kFieldHeight = 28;
    for (std::size_t at = 0; at < kColumns.size(); ++at) {
        const QRect cell = box(kColumns[at]);
        const int column = static_cast<int>(kColumns[at]);
        captions_[at]->setText(table_.model()->headerData(column, Qt::Horizontal).toString());
        captions_[at]->setGeometry(cell.left() + 1, 4, cell.width() - 2 - kTextSide, kCaption);
        fields_[at]->setGeometry(cell.left() + 1, 4 + kCaption, cell.width() - 2, kFieldHeight);
    }
    QRect seen = box(PassColumn::seen);
    seen.setRight(width() - 8);
    const int button = details_->sizeHint().width();
    details_->setGeometry(seen.right() - button, seen.center().y() - 12, button, 24);
    hint_->setGeometry(seen.adjusted(kTextSide, 0, -button - 6, 0));
    const bool fits = hint_->sizeHint().width() <= hint_->width();
    hint_->setVisible(fits || !hint_->toolTip().isEmpty());
}

void PassEntry::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    alignToColumns();
}

void PassEntry::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool isEntered =
        std::ranges::any_of(fields_, [](const PassNumberField* field) { return field->hasFocus(); });
    painter.setPen(QPen(isEntered ? theme().focus : theme().border, isEntered ? 2 : 1));
    painter.setBrush(over(theme().focus, isEntered ? 0.07 : 0.03, theme().card));
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 6, 6);
}

}  // namespace bolthole
