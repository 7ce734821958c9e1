// SPDX-License-Identifier: MIT
#include "ui/window/file_drop.h"

#include "ui/recordings/recording_words.h"

#include <QApplication>
#include <QDropEvent>
#include <QFileInfo>
#include <QMimeData>
#include <QUrl>
#include <QWidget>

namespace stillbay::ui {
namespace {

// The one local craft that is being dragged, if that is what is being dragged.
QString craftIn(const QMimeData& data)
{
    const QList<QUrl> urls = data.urls();
    if (urls.size() != 1 || !urls.front().isLocalFile())
        return {};
    const QString path = urls.front().toLocalFile();
    return path.endsWith(kCraftSuffix, Qt::CaseInsensitive) && QFileInfo(path).isFile() ? path
                                                                                        : QString();
}

}  // namespace

FileDrop::FileDrop(QWidget& window) : QObject(&window), m_window(window)
{
    window.setAcceptDrops(true);
    qApp->installEventFilter(this);  // a drag is offered to the innermost field first
}

// The files, where all of them are recordings.
QStringList FileDrop::recordingsIn(const QMimeData& data) const
{
    QStringList paths;
    for (const QUrl& url : data.urls()) {
        const QString path = url.toLocalFile();
        if (!m_takesRecordings || !isRecordingName(path) || !QFileInfo(path).isFile())
            return {};
        paths << path;
    }
    return paths;
}

bool FileDrop::eventFilter(QObject* watched, QEvent* event)
{
    const QEvent::Type type = event->type();
    if (type != QEvent::DragEnter && type != QEvent::DragMove && type != QEvent::Drop)
        return false;
    const auto* const widget = qobject_cast<const QWidget*>(watched);
    if (!widget || widget->window() != &m_window)
        return false;
    auto* const drag = static_cast<QDropEvent*>(event);  // of all three the base
    if (!drag->mimeData()->hasUrls())
        return false;
    const QString path = craftIn(*drag->mimeData());
    const QStringList recordings = recordingsIn(*drag->mimeData());
    if (path.isEmpty() && recordings.isEmpty()) {
        drag->ignore();
        return true;
    }
    drag->acceptProposedAction();
    if (type != QEvent::Drop)
        return true;
    if (path.isEmpty())
        emit recordingsDropped(recordings);
    else
        emit dropped(path);
    return true;
}

}  // namespace stillbay::ui
