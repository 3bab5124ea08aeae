/** Shows a picture that lies on the device, for as long as its element is there. */
export function shown(picture: Blob): (image: HTMLImageElement) => () => void {
  return (image) => {
    const url = URL.createObjectURL(picture)
    image.src = url
    return () => URL.revokeObjectURL(url)
  }
}
