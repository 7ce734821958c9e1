// SPDX-License-Identifier: MIT
#include "ui/compare/compare_view.h"

#include "core/assess/assess.h"
#include "core/base/units.h"
#include "core/setup/tunes.h"
#include "ui/charts/chart_heading.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/compare/compare_choices.h"
#include "ui/compare/compare_model.h"
#include "ui/document/read_craft.h"
#include "ui/document/throttle_cursor.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"

#include <QComboBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHeaderView>
#include <QListWidget>
#include <QSplitter>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <map>

namespace stillbay::ui {
namespace {

constexpr int kLeastColumn = 12, kMostColumn = 30;  // characters

QString keyOf(const QString& path)
{
    return QStringLiteral("file ") + path;
}

QString reasonOf(const Error& error)
{
    const QString where = displayText(whereText(error));
    const QString what = displayText(error.what);
    return where.isEmpty() ? what : QObject::tr("%1 (at %2)").arg(what, where);
}

}  // namespace

CompareView::CompareView(Document& document, ThrottleCursor& cursor, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_choices(new CompareChoices),
      m_through(new TransmissibilityChart(this)),
      m_wobble(new ThrottleChart(this)),
      m_model(new CompareModel(this)),
      m_table(new QTableView),
      m_job({.done = [this](const Result<std::vector<Result<TuneFigures>>>& figures) {
          for (std::size_t k = 0; k < m_files.size(); ++k)
              m_files[k].figures =
                  figures ? (*figures)[k]
                          : Result<TuneFigures>(tl::unexpected<Error>(figures.error()));
          refresh();
      }})
{
    m_through->setName(tr("Transmissibility, compared"));
    m_wobble->setName(tr("Wobble, compared"));
    m_through->showAsOneOf(tr("present tune"));
    m_wobble->showAsOneOf(tr("present tune"));
    makeTable();
    auto* const columns = new QSplitter(Qt::Horizontal);
    columns->setObjectName(QStringLiteral("view.compareColumns"));
    m_choices->setMinimumWidth(20 * fontMetrics().averageCharWidth());
    columns->addWidget(m_choices);
    columns->addWidget(makeRight());
    columns->setChildrenCollapsible(false);
    columns->setStretchFactor(0, 0);
    columns->setStretchFactor(1, 1);
    columns->setSizes({210, 900});
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(columns);

    const auto follow = [this](double throttle) {
        m_through->setThrottle(throttle);
        m_wobble->setThrottle(throttle);
    };
    follow(cursor.throttle());
    connect(&cursor, &ThrottleCursor::moved, this, follow);
    connect(m_wobble, &ThrottleChart::throttleWanted, &cursor, &ThrottleCursor::moveTo);
    connect(m_choices, &CompareChoices::changed, this, &CompareView::refresh);
    connect(m_choices, &CompareChoices::fileWanted, this, &CompareView::askForFile);
    connect(m_choices, &CompareChoices::removeWanted, this, &CompareView::removeFile);
    connect(&m_document, &Document::opened, this, [this] {
        m_tunes.clear();
        m_choices->forget();
        for (const File& file : m_files)
            m_choices->tick(keyOf(file.path));
    });
    connect(&m_document, &Document::setupChanged, this, &CompareView::refresh);
}

void CompareView::makeTable()
{
    m_table->setAccessibleName(tr("Numbers compared"));
    m_table->setModel(m_model);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setTabKeyNavigation(false);
    m_table->setAlternatingRowColors(true);
    m_table->setShowGrid(false);
    m_table->setWordWrap(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    m_table->verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    m_table->verticalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_table->horizontalHeader()->setTextElideMode(Qt::ElideRight);
    m_table->setMinimumHeight(5 * (fontMetrics().height() + 6));
    connect(m_model, &QAbstractItemModel::modelReset, this, &CompareView::fitColumns);
    connect(m_model, &QAbstractItemModel::dataChanged, this, [this] {
        const QAbstractItemView& cells = *m_table;
        for (int column = 0; column < m_model->columnCount(); ++column)
            if (cells.sizeHintForColumn(column) > m_table->columnWidth(column))
                return fitColumns();
    });
}

QWidget* CompareView::makeRight()
{
    auto* const motion = new QComboBox;
    motion->addItems({tr("largest shift"), tr("largest turn")});
    motion->setObjectName(QStringLiteral("view.compareMotion"));
    motion->setAccessibleName(tr("Motion of the airframe, compared"));
    motion->setToolTip(
        tr("The largest of the three axes: shifts along them, or turns about them. "
           "Only turns bend the picture."));
    connect(motion, &QComboBox::currentIndexChanged, this, [this](int index) {
        m_through->setMotion(index == 1 ? TransmissibilityChart::Motion::About
                                        : TransmissibilityChart::Motion::Along);
        refresh();
    });
    const auto framed = [](Chart& chart, const QString& explanation, QWidget* control) {
        auto* const frame = new QWidget;
        auto* const layout = new QVBoxLayout(frame);
        layout->setContentsMargins(4, 4, 4, 0);
        layout->setSpacing(2);
        chart.setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);  // narrow, if need be
        auto* const heading = new ChartHeading(chart, explanation);
        if (control)
            heading->add(control);
        layout->addWidget(heading);
        layout->addWidget(&chart, 1);
        return frame;
    };
    auto* const charts = new QSplitter(Qt::Horizontal);
    charts->setObjectName(QStringLiteral("view.compareCharts"));
    charts->addWidget(framed(*m_through, tr("of the three axes"), motion));
    charts->addWidget(framed(*m_wobble, tr("what the film shows"), nullptr));
    charts->setChildrenCollapsible(false);
    charts->setSizes({500, 500});
    auto* const rows = new QSplitter(Qt::Vertical);
    rows->setObjectName(QStringLiteral("view.compareRows"));
    rows->addWidget(charts);
    rows->addWidget(m_table);
    rows->setChildrenCollapsible(false);
    rows->setStretchFactor(0, 3);
    rows->setStretchFactor(1, 2);
    rows->setSizes({360, 260});
    return rows;
}

void CompareView::fitColumns()
{
    const int character = fontMetrics().averageCharWidth();
    m_table->resizeColumnsToContents();
    int all = 0;
    for (int column = 0; column < m_model->columnCount(); ++column)
        all += m_table->columnWidth(column);
    const int most = all <= m_table->viewport()->width() ? std::max(all, kLeastColumn * character)
                                                         : kMostColumn * character;
    for (int column = 0; column < m_model->columnCount(); ++column)
        m_table->setColumnWidth(
            column, std::clamp(m_table->columnWidth(column), kLeastColumn * character, most));
}

void CompareView::setResult(const Setup& setup, const Result<Assessment>& assessment)
{
    m_latest.emplace(setup, assessment);
    m_present = assessment ? Result<TuneFigures>(figuresOf(*assessment))
                           : Result<TuneFigures>(tl::unexpected<Error>(assessment.error()));
    refresh();
}

void CompareView::setStale(bool stale)
{
    m_isStale = stale;
    fade();
}

void CompareView::setTunes(std::vector<Result<TuneFigures>> figures, bool late)
{
    m_tunes = std::move(figures);
    m_isLate = late;
    refresh();
}

void CompareView::askForFile()
{
    const QString path = QFileDialog::getOpenFileName(
        this, tr("Compare with the craft of a file"),
        m_document.path().isEmpty() ? QDir::homePath() : QFileInfo(m_document.path()).path(),
        QObject::tr("Stillbay crafts (*.stillbay)"));
    if (!path.isEmpty())
        addFile(path);
}

// Added again, it is read again.
bool CompareView::addFile(const QString& path)
{
    Result<Setup> craft = readCraft(path);
    if (!craft) {
        m_choices->problem().format(tr("%1 cannot be compared: %2.")
                                        .arg(QDir::toNativeSeparators(QFileInfo(path).fileName()),
                                             reasonOf(craft.error())));
        return false;
    }
    m_choices->problem().format({});
    const QString absolute = QFileInfo(path).absoluteFilePath();
    std::erase_if(m_files, [&](const File& file) { return file.path == absolute; });
    m_files.push_back({absolute, *std::move(craft)});
    m_choices->tick(keyOf(absolute));
    assessFiles();
    refresh();
    return true;
}

void CompareView::removeFile(const QString& key)
{
    std::erase_if(m_files, [&](const File& file) { return keyOf(file.path) == key; });
    assessFiles();
    refresh();
}

void CompareView::assessFiles()
{
    std::vector<Setup> crafts;
    for (const File& file : m_files)
        crafts.push_back(file.craft);
    m_job.drop();  // an answer that is known arrives again
    m_job.want(crafts,
               [crafts](const Caller<std::vector<Result<TuneFigures>>>& caller)
                   -> Result<std::vector<Result<TuneFigures>>> {
                   std::vector<Result<TuneFigures>> all;
                   for (const Setup& craft : crafts) {
                       if (caller.stop.stop_requested())
                           return tl::unexpected(stoppedOnRequest());
                       if (Result<Assessment> assessment = assess(craft))
                           all.push_back(figuresOf(*std::move(assessment)));
                       else
                           all.push_back(tl::unexpected<Error>(assessment.error()));
                   }
                   return all;
               });
}

std::vector<ComparedCraft> CompareView::crafts() const
{
    const Setup& setup = m_document.setup();
    std::vector<ComparedCraft> crafts{{{},
                                       tr("present tune"),
                                       tr("The craft as it is now; it is always compared."),
                                       wholeDesignOf(setup),
                                       setup.limits,
                                       m_present}};
    std::map<std::string, int> turns;  // among those of the same instant
    for (std::size_t k = 0; k < setup.tunes.size(); ++k) {
        const Tune& tune = setup.tunes[k];
        const QString saved = QString::fromStdString(tune.saved);
        ComparedCraft craft{QStringLiteral("tune %1 %2").arg(saved).arg(turns[tune.saved]++),
                            QString::fromStdString(tune.name),
                            tr("Kept tune %1").arg(QString::fromStdString(tune.name)),
                            wholeDesignOf(withDesign(setup, tune.design)), setup.limits};
        if (k < m_tunes.size())
            craft.figures = m_tunes[k];
        crafts.push_back(std::move(craft));
    }
    for (const File& file : m_files) {
        const QString fileName = QFileInfo(file.path).fileName();
        crafts.push_back(
            {keyOf(file.path),
             file.craft.name.empty()
                 ? fileName
                 : tr("%1 (%2)").arg(QString::fromStdString(file.craft.name), fileName),
             QDir::toNativeSeparators(file.path), wholeDesignOf(file.craft), file.craft.limits,
             file.figures});
    }
    for (ComparedCraft& craft : crafts)
        craft.place = m_choices->placeOf(craft.key);
    return crafts;
}

void CompareView::refresh()
{
    m_isDrawn = false;
    if (isVisible())
        draw();
}

void CompareView::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    draw();
}

void CompareView::draw()
{
    if (m_isDrawn || !m_document.hasCraft())
        return;
    m_isDrawn = true;
    m_choices->offer(crafts());
    std::vector<ComparedCraft> compared = crafts();  // with the places just given
    std::erase_if(compared,
                  [&](const ComparedCraft& craft) { return !craft.key.isEmpty() && !craft.place; });
    drawCharts(compared);
    m_model->setCrafts(compared);
    fade();
}

void CompareView::drawCharts(const std::vector<ComparedCraft>& compared)
{
    if (m_latest && m_latest->second) {
        m_through->setAssessment(m_latest->first, *m_latest->second);
        m_wobble->setAssessment(m_latest->first, *m_latest->second);
    }
    const bool turns = m_through->motion() == TransmissibilityChart::Motion::About;
    std::vector<ComparedCurve> wobble, through;
    for (const ComparedCraft& craft : compared) {
        const TuneFigures* const known = craft.known();
        if (!known || !craft.place)
            continue;
        wobble.push_back({craft.name, *craft.place, {}, {}});
        for (const WobbleAt& at : known->curve) {
            wobble.back().x.push_back(kPercent * at.throttle);
            wobble.back().y.push_back(at.wobble_px);
        }
        through.push_back({craft.name, *craft.place, known->transmissibility.frequency_hz,
                           largestOf(known->transmissibility, turns)});
    }
    if (wobble != m_wobbleCurves)
        m_wobble->setCompared(wobble);
    if (through != m_throughCurves)
        m_through->setCompared(through);
    m_wobbleCurves = std::move(wobble);
    m_throughCurves = std::move(through);
}

void CompareView::fade()
{
    const bool hasFailed = m_latest && !m_latest->second;
    m_through->setStale(m_isStale || hasFailed);
    m_wobble->setStale(m_isStale || hasFailed);
    m_model->setLate(m_isStale || m_isLate);
}

}  // namespace stillbay::ui
