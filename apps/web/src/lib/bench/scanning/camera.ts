/** The part of the browser's Barcode Detection API that is used here: TypeScript does not know it yet. */
interface CodeDetector {
  detect(source: CanvasImageSource): Promise<readonly { readonly rawValue: string }[]>
}

declare global {
  interface Window {
    BarcodeDetector?: new (options: { formats: string[] }) => CodeDetector
  }
}

/** Whether this browser reads codes with its camera: it needs an encrypted address, or loopback. */
export function canScanWithCamera(): boolean {
  return 'BarcodeDetector' in window && 'mediaDevices' in navigator
}

/**
 * Looks through the camera until it sees a QR code or is stopped. The picture is shown and kept nowhere.
 * @throws DOMException when there is no camera or it may not be used
 */
export async function readCode(video: HTMLVideoElement, signal: AbortSignal): Promise<string | null> {
  if (window.BarcodeDetector === undefined) return null
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } })
  try {
    video.srcObject = stream
    await video.play()
    const detector = new window.BarcodeDetector({ formats: ['qr_code'] })
    while (!signal.aborted) {
      const [code] = await detector.detect(video)
      if (code !== undefined) return code.rawValue
      await new Promise((resume) => setTimeout(resume, 150))
    }
    return null
  } finally {
    for (const track of stream.getTracks()) track.stop()
  }
}
