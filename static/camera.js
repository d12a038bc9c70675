// Reads a QR code with the camera where the browser itself can read codes; nothing leaves the device.
export function look(video, found, failed) {
  let stream = null;
  let over = false;
  const stop = () => {
    over = true;
    stream?.getTracks().forEach((track) => track.stop());
    video.srcObject = null;
  };
  (async () => {
    let detector;
    try {
      detector = new BarcodeDetector({ formats: ["qr_code"] });
    } catch {
      failed("cannot");
      return;
    }
    try {
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
      if (over) return stop();
      video.srcObject = stream;
      await video.play();
    } catch {
      stop();
      failed("denied");
      return;
    }
    while (!over) {
      const codes = await detector.detect(video).catch(() => []);
      if (!over && codes[0]?.rawValue) {
        stop();
        found(codes[0].rawValue);
      }
      await new Promise((next) => setTimeout(next, 150));
    }
  })();
  return stop;
}
