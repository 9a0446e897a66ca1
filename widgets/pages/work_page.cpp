#include "widgets/pages/work_page.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>
#include <QScrollBar>
#include <QTimer>
#include <QVBoxLayout>
#include <utility>

#include "widgets/kit/quiet_scroller.h"
#include "widgets/kit/section.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/words/field_words.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

constexpr int kFieldsWidth = 372;
constexpr const char* kFieldsName = "fields";

}  // namespace

WorkPage::WorkPage(const QString& title, QWidget* parent)
    : QWidget(parent), title_(title), hub_(new SheetHub(this)), scroll_(new QuietScroller(this)) {
    setAccessibleName(title);
    scroll_->setObjectName(QLatin1String(kFieldsName));
    scroll_->setFixedWidth(kFieldsWidth);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    auto* right = new QuietScroller(this);
    auto* shown = new QWidget;
    shown->setAutoFillBackground(false);
    results_ = new QVBoxLayout(shown);
    results_->setContentsMargins(6, 10, 12, 12);
    results_->setSpacing(12);
    right->setWidget(shown);
    shown->setAutoFillBackground(false);
    starts_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    starts_->setObjectName(QStringLiteral("startingNumbers"));
    starts_->setWordWrap(true);
    starts_->setContentsMargins(4, 0, 4, 0);
    starts_->hide();
    results_->addWidget(starts_);
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(4);
    line->addWidget(scroll_);
    line->addWidget(right, 1);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] {
        stale_ = true;
        refreshIfSeen();
    });
    connect(hub_, &SheetHub::edited, this, &WorkPage::edited);
    connect(hub_, &SheetHub::uncertaintyRequested, this, &WorkPage::fieldRequested);
    connect(hub_, &SheetHub::howToRequested, this, &WorkPage::howToRequested);
}

void WorkPage::showState(const BenchState& state) {
    hub_->setState(state);
    std::string shape = shapeOf(state.car);
    if (!built_ || shape != shape_) {
        rebuild(shape);
    }
    hub_->showNumbers();
    showCombinations();
    stale_ = true;
    refreshIfSeen();
}

std::function<void()> WorkPage::whileCurrent(std::function<void()> show) const {
    return [this, car = state().car, show = std::move(show)] {
        if (!stale_ && state().car == car) {
            show();
        }
    };
}

void WorkPage::refreshIfSeen() {
    if (stale_ && built_ && isVisible()) {
        stale_ = false;
        const QString starts = startingHeading(state().car, [this](Scope scope) { return restsOn(scope); });
        starts_->showText(starts);
        starts_->setVisible(!starts.isEmpty());
        refresh();
    }
}

void WorkPage::rebuild(const std::string& shape) {
    const std::optional<FieldId> focused = hub_->targetFocus() ? hub_->targetFocus() : hub_->focused();
    const int scrolled = scroll_->verticalScrollBar()->value();
    setUpdatesEnabled(false);
    retire();
    auto* content = new QWidget;
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(12, 10, 4, 16);
    column->setSpacing(14);
    fill(content, column);
    column->addStretch(1);
    scroll_->setWidget(content);
    content->setAutoFillBackground(false);
    shape_ = shape;
    built_ = true;
    hub_->showNumbers();
    column->activate();
    scroll_->verticalScrollBar()->setValue(scrolled);
    setUpdatesEnabled(true);
    if (QWidget* editor = focused ? hub_->editor(*focused) : nullptr) {
        editor->setFocus();
    }
}

void WorkPage::retire() {
    hub_->clear();
    choices_.clear();
    retireScrolled(*scroll_);
}

QWidget* WorkPage::row(const FieldId& id, const QString& whenEmpty, QWidget* parent) {
    NumberField* number = hub_->makeField(id, parent);
    number->setPlaceholderText(whenEmpty);
    return new NumberRow(wordsFor(state().car, id).label, number, parent);
}

QWidget* WorkPage::choiceRow(Choice choice, const QString& label, const QStringList& options,
                             const QString& toolTip, QWidget* parent) {
    auto* box = new CalmCombo(parent);
    box->addItems(options);
    box->setAccessibleName(label);
    box->setToolTip(wrappedToolTip(toolTip));
    connect(box, &QComboBox::activated, this, [this, choice](int option) {
        hub_->request(SetChoice{choice, option});
        showCombinations();
    });
    choices_.push_back({choice, box});
    return new BoxRow(label, box, parent);
}

void WorkPage::showCombinations() {
    for (const ChoiceBox& each : choices_) {
        each.box->setCurrentIndex(chosen(state().car, each.choice));
    }
}

void WorkPage::focusField(const FieldId& id) {
    QWidget* editor = hub_->editor(id);
    if (editor == nullptr) {
        return;
    }
    for (Section* section : findChildren<Section*>()) {
        if (section->isAncestorOf(editor)) {
            section->setUnfolded(true);
        }
    }
    scroll_->widget()->layout()->activate();
    scroll_->ensureWidgetVisible(editor, 0, 60);
    editor->setFocus(Qt::OtherFocusReason);
    if (auto* field = qobject_cast<QLineEdit*>(editor)) {
        field->selectAll();
    }
    // What was unfolded finds its place only when this is over.
    QTimer::singleShot(0, editor, [this, editor] {
        scroll_->ensureWidgetVisible(editor, 0, 60);
        editor->setFocus(Qt::OtherFocusReason);
    });
}

void WorkPage::enter() {
    const QList<NumberField*> fields = scroll_->widget() == nullptr
                                           ? QList<NumberField*>()
                                           : scroll_->widget()->findChildren<NumberField*>();
    if (!fields.isEmpty()) {
        fields.constFirst()->setFocus(Qt::ShortcutFocusReason);
    } else if (auto* button = findChild<QPushButton*>()) {  // the one that adds what is not there
        button->setFocus(Qt::ShortcutFocusReason);
    } else {
        setFocus(Qt::ShortcutFocusReason);
    }
}

void WorkPage::commitPending() {
    hub_->commitAll();
    for (NumberField* field : findChildren<NumberField*>()) {
        field->commit();  // those a page has beside the hub's
    }
    if (auto* name = qobject_cast<NameField*>(focusWidget())) {
        name->commit();
    }
}

void WorkPage::discardTyping() {
    hub_->restoreAll();
    for (NumberField* field : findChildren<NumberField*>()) {
        field->restore();
    }
    for (NameField* name : findChildren<NameField*>()) {
        name->restore();
    }
}

void WorkPage::sayWhatIsWrong(ToneLabel& label, QStringList said) const {
    if (!state().traceIsCurrent) {
        said << tr("▲ The car can't be computed as it stands: %1")
                    .arg(QString::fromStdString(state().problem));
    }
    said.removeAll(QString());
    label.showText(said.join(QLatin1Char(' ')));
    label.setVisible(!said.isEmpty());
}

void WorkPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refreshIfSeen();
}

void WorkPage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), theme().window);
    painter.fillRect(QRect(0, 0, scroll_->width(), height()), theme().panel);
}

}  // namespace bolthole
