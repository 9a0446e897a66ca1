#include "widgets/pages/measure/help_window.h"

#include <QFile>
#include <QHBoxLayout>
#include <QImage>
#include <QLineEdit>
#include <QPainter>
#include <QShortcut>
#include <QSignalBlocker>
#include <QTabBar>
#include <QTextBrowser>
#include <QTextDocument>
#include <QTextFrame>
#include <QTextTable>
#include <QUrl>
#include <QVBoxLayout>
#include <array>
#include <functional>
#include <utility>

#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/sheets/measuring_picture.h"

namespace bolthole {

namespace {

constexpr std::array kFiles{"bench", "measuring", "words", "keys", "computed"};
constexpr QSizeF kPicture{150, 62};  // mm of paper
constexpr double kPixels = 4.6;      // for each of them
constexpr int kDense = 2;            // dots a pixel, for screens that have them

QString pictureName(std::size_t area) {
    return QStringLiteral("picture:%1").arg(area);
}

QImage drawn(const Car& car, const PlanArea& area) {
    QImage image((kDense * kPixels * kPicture).toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(kDense * kPixels, kDense * kPixels);
    drawMeasuringPicture(painter, QRectF({}, kPicture), PrintFonts(), car, area);
    painter.end();
    image.setDevicePixelRatio(kDense);
    return image;
}

// Single thin lines and room around the words.
void calmTables(QTextDocument& text) {
    for (QTextFrame* frame : text.rootFrame()->childFrames()) {
        if (auto* table = qobject_cast<QTextTable*>(frame)) {
            QTextTableFormat format = table->format();
            format.setBorderCollapse(true);
            format.setBorder(1);
            format.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
            format.setBorderBrush(theme().border);
            format.setCellSpacing(0);
            format.setCellPadding(3);
            table->setFormat(format);
        }
    }
}

/// Asks for pictures where others look for files.
class GuideText : public QTextBrowser {
  public:
    using Picture = std::function<QVariant(const QString&)>;
    GuideText(Picture picture, QWidget* parent) : QTextBrowser(parent), picture_(std::move(picture)) {}

    QVariant loadResource(int type, const QUrl& name) override {
        return type == QTextDocument::ImageResource ? picture_(name.toString()) : QVariant();
    }

  private:
    Picture picture_;
};

}  // namespace

HelpWindow::HelpWindow(const QString& pages, QWidget* parent)
    : QDialog(parent),
      pages_(pages),
      topics_(new QTabBar(this)),
      search_(new QLineEdit(this)),
      found_(new ToneLabel(ToneLabel::Tone::problem, QString(), this)),
      text_(new GuideText([this](const QString& name) { return picture(name); }, this)) {
    setObjectName(QStringLiteral("helpWindow"));
    setWindowTitle(tr("Help"));
    for (const QString& topic : {tr("At the bench"), tr("How to measure"), tr("Words"), tr("Keys and mouse"),
                                 tr("What is computed")}) {
        topics_->addTab(topic);
    }
    topics_->setAccessibleName(tr("Topics"));
    search_->setPlaceholderText(tr("Search (Ctrl+F)"));
    search_->setAccessibleName(tr("Search the help"));
    search_->setClearButtonEnabled(true);
    text_->setAccessibleName(tr("Help text"));
    text_->setOpenLinks(false);
    auto* column = new QVBoxLayout(this);
    auto* row = new QHBoxLayout;
    row->addWidget(topics_);
    row->addStretch(1);
    row->addWidget(found_);
    row->addWidget(search_);
    column->addLayout(row);
    column->addWidget(text_, 1);
    connect(topics_, &QTabBar::currentChanged, this, &HelpWindow::read);
    connect(search_, &QLineEdit::returnPressed, this, [this] { find(); });
    connect(search_, &QLineEdit::textEdited, this, [this] { found_->showText({}); });
    connect(new QShortcut(QKeySequence::Find, this), &QShortcut::activated, this, [this] {
        search_->setFocus(Qt::ShortcutFocusReason);
        search_->selectAll();
    });
    connect(new QShortcut(QKeySequence::FindNext, this), &QShortcut::activated, this, [this] { find(); });
    connect(new QShortcut(QKeySequence::FindPrevious, this), &QShortcut::activated, this,
            [this] { find(true); });
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] {
        if (isVisible()) {
            read(topics_->currentIndex());
        }
    });
    resize(860, 700);
}

void HelpWindow::showTopic(HelpTopic topic, const Car& car) {
    car_ = car;
    areas_ = measuringPlan(car);
    const QSignalBlocker blocker(topics_);
    topics_->setCurrentIndex(static_cast<int>(topic));
    read(topics_->currentIndex());
    show();
    activateWindow();
    text_->setFocus();
}

QString HelpWindow::textOf(int topic) const {
    const auto index = static_cast<std::size_t>(topic);
    QFile file(QStringLiteral(":/help/%1.md").arg(QLatin1String(kFiles[index])));
    if (!file.open(QIODevice::ReadOnly)) {
        return tr("This text is missing from the program.");
    }
    QString text = QString::fromUtf8(file.readAll());
    text.replace(QStringLiteral("PAGES"), pages_);
    return topic == static_cast<int>(HelpTopic::measuring) ? text + pictures() : text;
}

// The sheet's pictures of the car at hand, after the guide.
QString HelpWindow::pictures() const {
    QString text = QStringLiteral("\n\n## %1\n\n").arg(tr("This car, area by area"));
    for (std::size_t at = 0; at < areas_.size(); ++at) {
        const PlanArea& area = areas_[at];
        text += QStringLiteral("### %1\n\n![%1](%2)\n\n%3\n\n")
                    .arg(capitalized(area.title), pictureName(at), area.hint);
        text += area.caution.isEmpty() ? QString() : QStringLiteral("**%1**\n\n").arg(area.caution);
    }
    return text;
}

QVariant HelpWindow::picture(const QString& name) const {
    for (std::size_t at = 0; at < areas_.size(); ++at) {
        if (name == pictureName(at)) {
            return drawn(car_, areas_[at]);
        }
    }
    return {};
}

void HelpWindow::read(int topic) {
    text_->setMarkdown(textOf(topic));
    calmTables(*text_->document());
    text_->moveCursor(QTextCursor::Start);
}

bool HelpWindow::find(bool back) {
    const QString words = search_->text().trimmed();
    const QTextDocument::FindFlags way = back ? QTextDocument::FindBackward : QTextDocument::FindFlags();
    found_->showText({});
    if (words.isEmpty() || text_->find(words, way)) {
        return !words.isEmpty();
    }
    const int here = topics_->currentIndex();
    const int count = topics_->count();
    for (int step = 1; step <= count; ++step) {
        topics_->setCurrentIndex((here + (back ? count - step : step)) % count);
        text_->moveCursor(back ? QTextCursor::End : QTextCursor::Start);
        if (text_->find(words, way)) {
            return true;
        }
    }
    found_->showText(tr("Not found"));
    return false;
}

}  // namespace bolthole
