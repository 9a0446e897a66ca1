#include "app/papers/template_dialogs.h"

#include <QFileDialog>
#include <QObject>

#include "app/carfile/file_writing.h"
#include "app/papers/paper_dialogs.h"
#include "app/papers/paper_names.h"
#include "widgets/kit/translation.h"
#include "widgets/papers/template_cut.h"

namespace bolthole {

namespace {

QString what() {
    return tr("drilling template");
}

/// The papers that take it, each turned the way that needs fewer sheets. Without papers: none does, and
/// `refusal` says why.
PaperJob jobOf(const TemplateRequest& request, QString& refusal) {
    PaperJob job;
    job.what = what();
    job.title = QString::fromStdString(request.car.title);
    for (const PaperName& entry : kPapers) {
        const QPageLayout page = templatePageOf(entry.paper, request);
        const QString problem = templateRefusal(request, page);
        if (!problem.isEmpty()) {
            refusal = problem;
            continue;
        }
        if (entry.paper == usualPaper(request.style.units)) {
            job.paper = static_cast<int>(job.papers.size());
        }
        job.papers.push_back({QString::fromUtf8(entry.name), page});
    }
    job.layOut = [request](const QPageLayout& page) {
        return std::make_unique<DrillingTemplate>(request, page);
    };
    return job;
}

}  // namespace

void previewTemplate(QWidget* parent, const TemplateRequest& request) {
    QString refusal;
    const PaperJob job = jobOf(request, refusal);
    job.papers.empty() ? sayOfPaper(parent, what(), refusal) : previewPaper(parent, job);
}

bool saveTemplate(QWidget* parent, const TemplateRequest& request, QString fileName) {
    QString refusal;
    const PaperJob job = jobOf(request, refusal);
    if (job.papers.empty()) {
        sayOfPaper(parent, what(), refusal);
        return false;
    }
    return savePaper(parent, job, job.papers[static_cast<std::size_t>(job.paper)].page, std::move(fileName));
}

bool saveTemplateCut(QWidget* parent, const TemplateRequest& request, QString fileName) {
    if (fileName.isEmpty()) {
        fileName = QFileDialog::getSaveFileName(
            parent, QObject::tr("Save the bracket for a cutting table"), QObject::tr("bracket.svg"),
            QObject::tr("Pictures at true size (*.svg);;Drawings (*.dxf)"));
    }
    if (fileName.isEmpty()) {
        return false;
    }
    const TemplateScene scene = templateScene(request, TemplateFace::left);
    const QByteArray bytes = fileName.endsWith(QLatin1String(".dxf"), Qt::CaseInsensitive)
                                 ? templateDxf(scene, request.style.units)
                                 : templateSvg(scene, QString::fromStdString(request.car.title));
    const std::string problem = writeWholeFile(fileName.toStdString(), bytes.toStdString());
    if (!problem.empty()) {
        sayOfPaper(parent, what(), fileName + QStringLiteral(": ") + QString::fromStdString(problem));
        return false;
    }
    tellSaved(what(), fileName);
    return true;
}

}  // namespace bolthole
