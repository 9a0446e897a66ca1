#include "app/chart_dialogs.h"

#include <QComboBox>
#include <QDialog>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "app/chart_file.h"

namespace bolthole {

namespace {

struct PaperName {
    ChartPaper paper;
    const char* name;
};
constexpr std::array<PaperName, 4> kPapers{{{ChartPaper::letter, "Letter, 8 1/2 × 11 in"},
                                            {ChartPaper::tabloid, "Tabloid, 11 × 17 in"},
                                            {ChartPaper::a4, "A4, 210 × 297 mm"},
                                            {ChartPaper::a3, "A3, 297 × 420 mm"}}};

void say(QWidget* parent, const QString& what) {
    QMessageBox::warning(parent, QStringLiteral("Wall chart"), what);
}

// Says why there is no chart; true where there is.
bool canChart(QWidget* parent, const ChartRequest& request) {
    const QString refusal = chartRefusal(request);
    if (!refusal.isEmpty()) {
        say(parent, refusal);
    }
    return refusal.isEmpty();
}

QString suggestedName(const ChartRequest& request) {
    QString name = QString::fromStdString(request.car.title).simplified();
    for (const QChar bad : QStringLiteral("/\\:*?\"<>|")) {
        name.remove(bad);
    }
    return (name.isEmpty() ? QStringLiteral("Car") : name) + QStringLiteral(" wall chart.pdf");
}

/// The preview: the sheets as they will be printed, and what to do with them.
class ChartPreview {
  public:
    ChartPreview(QWidget* parent, const ChartRequest& request);
    void exec() { dialog_.exec(); }

  private:
    void addControls(QHBoxLayout& row);
    void showPaper(ChartPaper paper);
    void showSheet(int sheet);
    [[nodiscard]] ChartPaper paper() const { return static_cast<ChartPaper>(papers_.currentData().toInt()); }

    const ChartRequest& request_;
    QDialog dialog_;
    QPrinter printer_{QPrinter::HighResolution};
    QPrintPreviewWidget pages_{&printer_, &dialog_};
    QComboBox papers_{&dialog_};
    QLabel sheet_{&dialog_};
    QPushButton before_{QStringLiteral("&Previous sheet"), &dialog_};
    QPushButton after_{QStringLiteral("&Next sheet"), &dialog_};
    std::unique_ptr<WallChart> chart_;
};

ChartPreview::ChartPreview(QWidget* parent, const ChartRequest& request)
    : request_(request), dialog_(parent) {
    dialog_.setWindowTitle(QStringLiteral("Wall chart"));
    dialog_.resize(1040, 820);
    printer_.setOutputFormat(QPrinter::PdfFormat);  // the preview must not depend on printers
    auto* layout = new QVBoxLayout(&dialog_);
    auto* row = new QHBoxLayout;
    addControls(*row);
    layout->addLayout(row);
    layout->addWidget(&pages_, 1);
    QObject::connect(&pages_, &QPrintPreviewWidget::paintRequested, &dialog_, [this](QPrinter* printer) {
        if (chart_ && !printChart(*chart_, *printer)) {
            say(&dialog_, QStringLiteral("The chart could not be painted."));
        }
    });
    QObject::connect(&pages_, &QPrintPreviewWidget::previewChanged, &dialog_,
                     [this] { showSheet(pages_.currentPage()); });
    showPaper(paper());
}

void ChartPreview::addControls(QHBoxLayout& row) {
    for (const PaperName& entry : kPapers) {
        papers_.addItem(QString::fromUtf8(entry.name), static_cast<int>(entry.paper));
    }
    papers_.setCurrentIndex(papers_.findData(static_cast<int>(usualPaper(request_.style.units))));
    papers_.setAccessibleName(QStringLiteral("Paper"));
    auto* paperLabel = new QLabel(QStringLiteral("P&aper"), &dialog_);
    paperLabel->setBuddy(&papers_);
    auto* print = new QPushButton(QStringLiteral("P&rint…"), &dialog_);
    auto* save = new QPushButton(QStringLiteral("&Save as PDF…"), &dialog_);
    auto* close = new QPushButton(QStringLiteral("&Close"), &dialog_);
    row.addWidget(paperLabel);
    row.addWidget(&papers_);
    row.addSpacing(16);
    row.addWidget(&before_);
    row.addWidget(&sheet_);
    row.addWidget(&after_);
    row.addStretch(1);
    for (QPushButton* button : {print, save, close}) {
        button->setAutoDefault(false);
        row.addWidget(button);
    }
    before_.setAutoDefault(false);
    after_.setAutoDefault(false);
    QObject::connect(&papers_, &QComboBox::currentIndexChanged, &dialog_, [this] { showPaper(paper()); });
    QObject::connect(&before_, &QPushButton::clicked, &dialog_,
                     [this] { showSheet(pages_.currentPage() - 1); });
    QObject::connect(&after_, &QPushButton::clicked, &dialog_,
                     [this] { showSheet(pages_.currentPage() + 1); });
    QObject::connect(print, &QPushButton::clicked, &dialog_,
                     [this] { printChartOnPaper(&dialog_, request_, paper()); });
    QObject::connect(save, &QPushButton::clicked, &dialog_,
                     [this] { exportChart(&dialog_, request_, paper()); });
    QObject::connect(close, &QPushButton::clicked, &dialog_, &QDialog::accept);
}

void ChartPreview::showPaper(ChartPaper paper) {
    const QPageLayout page = pageLayoutOf(paper);
    printer_.setPageLayout(page);
    chart_ = std::make_unique<WallChart>(request_, page);
    pages_.updatePreview();
    pages_.fitInView();
    showSheet(1);
}

void ChartPreview::showSheet(int sheet) {
    const int count = chart_ ? chart_->sheetCount() : 1;
    const int shown = std::clamp(sheet, 1, count);
    if (pages_.currentPage() != shown) {
        pages_.setCurrentPage(shown);
    }
    sheet_.setText(QStringLiteral("sheet %1 of %2").arg(shown).arg(count));
    before_.setEnabled(shown > 1);
    after_.setEnabled(shown < count);
}

}  // namespace

QString chartRefusal(const ChartRequest& request) {
    if (request.lengths == LengthTreatment::uppers && !hasUpperRod(request.car)) {
        return QStringLiteral("The car has no upper rods to set: choose another treatment of the lengths.");
    }
    if (const std::uint64_t count = chartChoiceCount(request.car); count > kMostChartChoices) {
        return QStringLiteral("The holes make %1 choices; a wall chart is made for %2 at most.")
            .arg(count)
            .arg(kMostChartChoices);
    }
    return {};
}

void previewChart(QWidget* parent, const ChartRequest& request) {
    if (canChart(parent, request)) {
        ChartPreview(parent, request).exec();
    }
}

bool printChartOnPaper(QWidget* parent, const ChartRequest& request, ChartPaper paper) {
    if (!canChart(parent, request)) {
        return false;
    }
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(pageLayoutOf(paper));
    printer.setDocName(QString::fromStdString(request.car.title));
    QPrintDialog dialog(&printer, parent);
    dialog.setOption(QAbstractPrintDialog::PrintPageRange, false);
    if (dialog.exec() != QDialog::Accepted) {
        return false;
    }
    // The dialog may have changed the paper and turned it; the printer may ask for wider margins.
    printer.setPageOrientation(QPageLayout::Landscape);
    const bool printed = printChart(WallChart(request, printer.pageLayout()), printer);
    if (!printed) {
        say(parent, QStringLiteral("The chart could not be printed."));
    }
    return printed;
}

bool exportChart(QWidget* parent, const ChartRequest& request, ChartPaper paper, QString fileName) {
    if (!canChart(parent, request)) {
        return false;
    }
    if (fileName.isEmpty()) {
        fileName = QFileDialog::getSaveFileName(parent, QStringLiteral("Save the wall chart"),
                                                suggestedName(request), QStringLiteral("PDF files (*.pdf)"));
    }
    if (fileName.isEmpty()) {
        return false;
    }
    const std::string problem = writeChartFile(request, paper, fileName.toStdString());
    if (!problem.empty()) {
        say(parent, fileName + QStringLiteral(": ") + QString::fromStdString(problem));
    }
    return problem.empty();
}

}  // namespace bolthole
