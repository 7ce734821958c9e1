// SPDX-License-Identifier: MIT
#include "ui/window/welcome_page.h"

#include "core/setup/text.h"
#include "ui/widgets/labels.h"
#include "ui/window/recent_list.h"

#include <QCommandLinkButton>
#include <QDir>
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

// In a static library the samples are taken in by name; the macro wants no namespace around it.
static void takeInSamples()
{
    Q_INIT_RESOURCE(samples);
}

namespace stillbay::ui {
namespace {

constexpr int kColumn = 560;  // readable width of the page

}  // namespace

QList<Sample> samples()
{
    takeInSamples();
    QList<Sample> result;
    const QDir folder(QStringLiteral(":/samples"));
    for (const QString& name : folder.entryList({QStringLiteral("*.stillbay")})) {
        QFile file(folder.filePath(name));
        if (!file.open(QIODevice::ReadOnly))
            continue;
        const auto loaded = readSetup(file.readAll().toStdString());
        if (loaded)
            result.append({QString::fromStdString(loaded->setup.name),
                           QString::fromStdString(loaded->setup.notes), folder.filePath(name)});
    }
    std::sort(result.begin(), result.end(),
              [](const Sample& a, const Sample& b) { return a.title < b.title; });
    return result;
}

WelcomePage::WelcomePage(RecentFiles& recent, QWidget* parent) : QWidget(parent)
{
    auto* const title = new QLabel(tr("Which tube keeps the vibration out of your film?"), this);
    QFont large = title->font();
    large.setPointSizeF(1.6 * large.pointSizeF());
    large.setBold(true);
    title->setFont(large);
    title->setWordWrap(true);
    auto* const text = new QLabel(
        tr("Describe your craft once: its parts, motors, tubes and camera. Then drag tube length "
           "and stretch, and see at which throttle the film stays clean."),
        this);
    text->setWordWrap(true);
    auto* const fresh = new QPushButton(tr("New craft…"), this);
    fresh->setDefault(true);
    fresh->setMinimumSize(fresh->sizeHint() + QSize(32, 8));
    connect(fresh, &QPushButton::clicked, this, &WelcomePage::newWanted);
    auto* const open = new QPushButton(tr("Open a craft…"), this);
    open->setMinimumSize(open->sizeHint() + QSize(32, 8));
    connect(open, &QPushButton::clicked, this, &WelcomePage::openWanted);
    auto* const hint = new QuietLabel(tr("or drop a .stillbay file on this window."), this);

    auto* const column = new QWidget(this);
    column->setMaximumWidth(kColumn);
    auto* const layout = new QVBoxLayout(column);
    layout->setSpacing(10);
    layout->addWidget(title);
    layout->addWidget(text);
    layout->addSpacing(8);
    auto* const ways = new QHBoxLayout;
    ways->addWidget(fresh);
    ways->addWidget(open);
    ways->addStretch(1);
    layout->addLayout(ways);
    layout->addWidget(hint);
    layout->addSpacing(8);
    auto* const last = new RecentList(recent, this);
    connect(last, &RecentList::chosen, this, &WelcomePage::fileWanted);
    layout->addWidget(last);
    layout->addSpacing(8);
    layout->addWidget(new QLabel(tr("Start from an invented sample:"), this));
    for (const Sample& sample : samples()) {
        auto* const button = new QCommandLinkButton(sample.title, sample.notes, this);
        button->setAccessibleName(tr("Sample: %1").arg(sample.title));
        connect(button, &QPushButton::clicked, this, [this, sample] { emit sampleWanted(sample); });
        layout->addWidget(button);
    }

    auto* const page = new QVBoxLayout(this);
    page->addStretch(2);
    auto* const middle = new QHBoxLayout;
    middle->addStretch(1);
    middle->addWidget(column, 6);
    middle->addStretch(1);
    page->addLayout(middle);
    page->addStretch(3);
}

}  // namespace stillbay::ui
