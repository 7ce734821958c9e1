// SPDX-License-Identifier: MIT
#include "ui/tunes/tunes_panel.h"

#include "core/setup/tunes.h"
#include "ui/tunes/small_curve.h"
#include "ui/tunes/tunes_model.h"
#include "ui/widgets/labels.h"

#include <QAction>
#include <QApplication>
#include <QDateTime>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QTableView>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr std::chrono::milliseconds kQuiet(400);  // after the last edit
constexpr int kRowsInSight = 3;                   // more of them scroll

}  // namespace

TunesPanel::TunesPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_model(new TunesModel(document, this)),
      m_table(new QTableView),
      m_fold(new QToolButton),
      m_hint(new ElidedLabel(Qt::AlignLeft)),
      m_refusal(new ProblemLabel),
      m_job({.done =
                 [this](const Result<std::vector<Result<TuneFigures>>>& figures) {
                     if (figures)
                         m_model->setFigures(*figures);
                 }},
            kQuiet)
{
    makeActions();
    makeTable();
    layOut();
    connect(&m_document, &Document::setupChanged, this, &TunesPanel::setupChanged);
    connect(&m_document, &Document::fileChanged, this,
            [this] { m_keep->setEnabled(m_document.hasCraft()); });
    connect(m_model, &TunesModel::comparedChanged, this, &TunesPanel::comparedChanged);
    connect(m_model, &TunesModel::modelReset, this, &TunesPanel::showState);
    connect(m_model, &TunesModel::refused, m_refusal, &ProblemLabel::refuse);
    showState();
}

void TunesPanel::makeActions()
{
    m_keep = new QAction(tr("&Keep this tune"), this);
    m_keep->setShortcut(Qt::CTRL | Qt::Key_K);
    m_keep->setToolTip(tr("Puts the present tube, length, stretch and mounts aside under a name."));
    m_keep->setEnabled(false);  // until there is a craft
    connect(m_keep, &QAction::triggered, this, &TunesPanel::keep);
    m_restore = new QAction(tr("Take this tune"), this);
    m_restore->setToolTip(tr("Makes the chosen tune the present one; one step for undo."));
    connect(m_restore, &QAction::triggered, this, &TunesPanel::restore);
    m_delete = new QAction(tr("Delete"), this);
    m_delete->setToolTip(tr("Deletes the chosen tune; undo brings it back."));
    m_delete->setShortcut(QKeySequence::Delete);
    m_delete->setShortcutContext(Qt::WidgetShortcut);
    connect(m_delete, &QAction::triggered, this, &TunesPanel::remove);
    m_table->addAction(m_delete);
}

void TunesPanel::makeTable()
{
    m_table->setAccessibleName(tr("Kept tunes"));
    m_table->setModel(m_model);
    m_table->setItemDelegateForColumn(TunesModel::Curve, new SmallCurve(*m_model, this));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setShowGrid(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setSectionResizeMode(TunesModel::Notes, QHeaderView::Stretch);
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(m_table->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &TunesPanel::showState);
}

void TunesPanel::layOut()
{
    QFont bold = m_fold->font();
    bold.setBold(true);
    m_fold->setFont(bold);
    m_fold->setText(tr("Kept tunes"));
    m_fold->setAccessibleName(tr("Show the kept tunes"));
    m_fold->setToolTip(tr("Folds the list away, to give the charts its room."));
    m_fold->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_fold->setAutoRaise(true);
    m_fold->setFocusPolicy(Qt::StrongFocus);
    m_fold->setObjectName(QStringLiteral("view.tunesFold"));
    m_fold->setCheckable(true);
    m_fold->setChecked(true);
    connect(m_fold, &QToolButton::toggled, this, &TunesPanel::showState);
    auto* const head = new QHBoxLayout;
    head->addWidget(m_fold);
    head->addWidget(m_hint, 1);
    for (QAction* action : {m_keep, m_restore, m_delete}) {
        auto* const button = new QToolButton;
        button->setDefaultAction(action);
        button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        button->setFocusPolicy(Qt::StrongFocus);
        button->setAccessibleName(action == m_keep      ? tr("Keep this tune, button")
                                  : action == m_restore ? tr("Take the chosen tune")
                                                        : tr("Delete the chosen tune"));
        head->addWidget(button);
        if (action == m_keep)
            m_keepButton = button;
    }
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 3, 8, 3);
    layout->setSpacing(2);
    layout->addLayout(head);
    layout->addWidget(m_refusal);
    layout->addWidget(m_table);
}

int TunesPanel::chosen() const
{
    const QModelIndexList rows = m_table->selectionModel()->selectedRows();
    return rows.isEmpty() ? -1 : rows.front().row();
}

void TunesPanel::showState()
{
    const int rows = m_model->rowCount();
    m_hint->setText(rows == 0
                        ? tr("keep a tune to compare it with the next one; it is saved with the "
                             "craft")
                        : tr("tick tunes to see them over the present one in both charts"));
    m_fold->setArrowType(m_fold->isChecked() ? Qt::DownArrow : Qt::RightArrow);
    m_table->setVisible(rows > 0 && m_fold->isChecked());
    const int height = m_table->verticalHeader()->defaultSectionSize();
    m_table->setFixedHeight(m_table->horizontalHeader()->sizeHint().height() +
                            std::min(rows, kRowsInSight) * height + 2);
    m_restore->setEnabled(chosen() >= 0);
    m_delete->setEnabled(chosen() >= 0);
}

bool TunesPanel::edit(const QString& text, const std::function<void(Setup&)>& change)
{
    return m_refusal->display(m_document.edit(text, {}, change));
}

void TunesPanel::keep()
{
    const Setup& setup = m_document.setup();
    const std::string now = QDateTime::currentDateTimeUtc().toString(Qt::ISODate).toStdString();
    const Tune tune = presentTune(setup, freeTuneName(setup), now);
    if (!edit(tr("Keep a tune"), [&](Setup& changed) { changed.tunes.push_back(tune); }))
        return;
    m_fold->setChecked(true);
    m_table->selectRow(m_model->rowCount() - 1);
    m_table->scrollToBottom();
    if (hasFocusInside())  // a slider that is being tried keeps it
        m_table->setFocus();
}

void TunesPanel::restore()
{
    const int row = chosen();
    if (row < 0)
        return;
    const Tune tune = m_model->tune(row);
    edit(tr("Take the tune %1").arg(QString::fromStdString(tune.name)),
         [&](Setup& changed) { changed = withDesign(std::move(changed), tune.design); });
}

void TunesPanel::remove()
{
    const int row = chosen();
    if (row < 0)
        return;
    const bool hadFocus = hasFocusInside();
    edit(tr("Delete the tune %1").arg(QString::fromStdString(m_model->tune(row).name)),
         [row](Setup& changed) { changed.tunes.erase(changed.tunes.begin() + row); });
    m_table->selectRow(std::min(row, m_model->rowCount() - 1));
    if (hadFocus && m_model->rowCount() > 0)
        m_table->setFocus();
    else if (hadFocus)
        m_keepButton->setFocus();
}

bool TunesPanel::hasFocusInside() const
{
    return isAncestorOf(QApplication::focusWidget());
}

void TunesPanel::setupChanged()
{
    const Setup& setup = m_document.setup();
    m_job.want(tuneFiguresKey(setup),
               [setup](const Caller<std::vector<Result<TuneFigures>>>& caller) {
                   return figuresOfTunes(setup, caller.stop);
               });
    m_model->setLate(m_job.isDue());
}

std::vector<ComparedCurve> TunesPanel::compared(
    const std::function<void(const TuneFigures&, ComparedCurve&)>& fill) const
{
    std::vector<ComparedCurve> curves;
    for (int row = 0; row < m_model->rowCount(); ++row) {
        const auto place = m_model->comparedPlace(row);
        const TuneFigures* const figures = m_model->figures(row);
        if (!place || !figures)
            continue;
        curves.push_back({QString::fromStdString(m_model->tune(row).name), *place, {}, {}});
        fill(*figures, curves.back());
    }
    return curves;
}

std::vector<ComparedCurve> TunesPanel::wobbleCurves() const
{
    return compared([](const TuneFigures& figures, ComparedCurve& curve) {
        for (const WobbleAt& at : figures.curve) {
            curve.x.push_back(100.0 * at.throttle);
            curve.y.push_back(at.wobble_px);
        }
    });
}

std::vector<ComparedCurve> TunesPanel::tubeCurves(bool turns) const
{
    return compared([turns](const TuneFigures& figures, ComparedCurve& curve) {
        const TransmissibilityCurves& t = figures.transmissibility;
        curve.name = tr("%1, largest").arg(curve.name);
        curve.x = t.frequency_hz;
        for (std::size_t k = 0; k < t.frequency_hz.size(); ++k)
            curve.y.push_back(turns ? std::max({t.roll[k], t.pitch[k], t.yaw[k]})
                                    : std::max({t.x[k], t.y[k], t.z[k]}));
    });
}

}  // namespace stillbay::ui
